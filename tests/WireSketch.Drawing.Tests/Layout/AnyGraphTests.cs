using System.Collections.Immutable;
using CsCheck;
using WireSketch.Drawing.Layout;
using Xunit;

namespace WireSketch.Drawing.Tests.Layout;

/// <summary>The laws hold for graphs no install would have: any terminal on any side, joined to any others.</summary>
public class AnyGraphTests
{
    private static readonly LayoutOptions Quick = new(740, 440, Effort: 0.004);

    private static readonly Gen<SheetGraph> Graphs = Gen.Select(
        Gen.Bool.Array[1, 4],
        Gen.Select(
            Gen.Int[0, 3],
            Gen.Enum<DeviceShape>(),
            Gen.Int[0, 20],
            Gen.Select(Gen.Enum<PortSide>(), Gen.Int[0, 30], Gen.Bool).Array[0, 6]).Array[1, 12],
        Gen.Select(Gen.Int[0, 999], Gen.Int[0, 999].Array[1, 3], Gen.Int[0, 60], Gen.Int[7, 30], Gen.Int[0, 3]).Array[0, 24],
        Build);

    /// <summary>The same graphs in every run, each from a seed of its own, so that a failure can be gone back to.</summary>
    [Fact]
    public void No_law_is_broken_on_any_graph()
    {
        for (var seed = 1UL; seed <= 150; seed++)
        {
            var graph = Graphs.Generate(new PCG(1, seed), null, out _);
            var broken = LayoutLaws.Broken(graph, SheetArranger.Arrange(graph, Quick));
            Assert.True(broken.Count == 0, $"seed {seed}: {string.Join("; ", broken.Take(6))} in {Text(graph)}");
        }
    }

    private static string Text(SheetGraph graph) =>
        string.Join(' ', graph.Devices.Select(d => $"{d.Id}:{d.Zone}{d.Shape}[{string.Join(' ', d.Ports.Select(p => p.Side))}]"))
        + " | "
            + string.Join(
                ' ',
                graph.Wires.Select(w => $"{w.Id}:{w.From}-{string.Join(',', w.To)}({w.LabelWidth}x{w.LabelHeight},{w.Bundle})"))
        + " | " + string.Join(' ', graph.Zones.Select(z => z.WallAfter));

    private static SheetGraph Build(
        bool[] walls,
        (int Zone, DeviceShape Shape, int Footer, (PortSide Side, int Name, bool Numbered)[] Ports)[] devices,
        (int From, int[] To, int Width, int Height, int Bundle)[] wires)
    {
        var boxes = devices.Select((d, k) => new DeviceBox(
            $"d{k}", d.Zone % walls.Length, d.Shape, 30 + d.Footer, d.Shape == DeviceShape.Box ? 12 : 0, d.Footer,
            [.. d.Ports.Take(d.Shape switch { DeviceShape.Chassis => 1, DeviceShape.Holder => 2, _ => 6 })
                .Select((p, i) =>
                    new PortBox(
                        $"d{k}.{i}", Side(d.Shape, p.Side, i), d.Shape == DeviceShape.Box ? p.Name : 0, p.Numbered, Free: p.Name % 2 == 0))
            ]))
            .ToImmutableArray();
        var ports = boxes.SelectMany(b => b.Ports.Select(p => p.Id)).ToArray();
        var links = wires.Where(_ => ports.Length > 4).Select((w, k) =>
        {
            string from = ports[w.From % ports.Length];
            var to = w.To.Select(t => ports[t % ports.Length]).Where(t => t != from).Distinct().ToImmutableArray();
            return new WireLink(
                $"w{k}", $"w{k}", $"net {k}", "supply", from, to, w.Width, w.Width > 0 ? w.Height : 0, 3,
                w.Bundle == 0 ? null : $"b{w.Bundle}");
        }).Where(w => w.To.Length > 0);
        return new SheetGraph([.. walls.Select((w, k) => new ZoneBox($"z{k}", 40, w))], boxes, [.. links]);
    }

    private static PortSide Side(DeviceShape shape, PortSide side, int index) => shape switch
    {
        DeviceShape.Chassis => PortSide.Top,
        DeviceShape.Holder => index == 0 ? PortSide.Left : PortSide.Right,
        DeviceShape.Slim => index % 2 == 0 ? PortSide.Left : PortSide.Right,
        _ => side,
    };
}
