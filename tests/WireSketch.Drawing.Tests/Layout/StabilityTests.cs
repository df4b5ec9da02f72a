using WireSketch.Drawing.Layout;
using Xunit;

namespace WireSketch.Drawing.Tests.Layout;

public class StabilityTests
{
    private static readonly LayoutOptions Options = new(740, 440, Effort: 0.1);

    [Fact]
    public void The_same_graph_gives_the_same_layout()
    {
        var graph = SyntheticSystem.Of(25, 3);
        Assert.Equal(Text(SheetArranger.Arrange(graph, Options)), Text(SheetArranger.Arrange(graph, Options)));
    }

    [Fact]
    public void A_device_more_leaves_four_fifths_of_the_others_in_their_place()
    {
        for (int seed = 1; seed <= 5; seed++)
        {
            var larger = SyntheticSystem.Of(25, seed);
            string added = larger.Devices.Last(d => d.Shape == DeviceShape.Slim).Id;
            var smaller = Without(larger, added);
            var before = SheetArranger.Arrange(smaller, Options).Arrangement;
            var after = SheetArranger.Arrange(larger, Options with { Previous = before }).Arrangement.Devices.ToDictionary(d => d.Id);
            int kept = before.Devices.Count(d => after[d.Id].SubColumn == d.SubColumn && Math.Abs(after[d.Id].Rank - d.Rank) <= 1);
            Assert.True(kept * 10 >= before.Devices.Length * 8, $"seed {seed}: {kept} of {before.Devices.Length} kept their place");
        }
    }

    [Fact]
    public void The_same_graph_laid_out_from_its_own_arrangement_keeps_nine_tenths_of_it()
    {
        for (int seed = 1; seed <= 4; seed++)
        {
            var graph = SyntheticSystem.Of(25, seed);
            var before = SheetArranger.Arrange(graph, Options).Arrangement;
            var after = SheetArranger.Arrange(graph, Options with { Previous = before }).Arrangement;
            int kept = before.Devices.Zip(after.Devices).Count(p => p.First.SubColumn == p.Second.SubColumn);
            Assert.True(kept * 10 >= before.Devices.Length * 9, $"seed {seed}: {kept} of {before.Devices.Length}");
        }
    }

    private static SheetGraph Without(SheetGraph graph, string device)
    {
        var wires = graph.Wires.Where(w => !w.From.StartsWith(device + ".", StringComparison.Ordinal))
            .Select(w => w with { To = [.. w.To.Where(t => !t.StartsWith(device + ".", StringComparison.Ordinal))] })
            .Where(w => w.To.Length > 0).ToList();
        var used = wires.SelectMany(w => w.To.Prepend(w.From)).ToHashSet();
        var devices = graph.Devices.Where(d => d.Id != device).Select(d => d with { Ports = [.. d.Ports.Where(p => used.Contains(p.Id))] });
        return graph with { Devices = [.. devices], Wires = [.. wires] };
    }

    private static string Text(SheetLayout sheet) => string.Join('\n',
        sheet.Devices.Select(d => $"{d.Id} {d.Box} {string.Join(' ', d.Ports.Select(p => p.At))}")
        .Concat(sheet.Wires.Select(w =>
            $"{w.Id} {w.Label} {string.Join(';', w.Polylines.Select(c => string.Join(' ', c)))} {string.Join(' ', w.Dots)}"))
        .Append(sheet.Size.ToString()));
}
