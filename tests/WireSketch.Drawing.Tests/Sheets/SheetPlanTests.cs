using WireSketch.Drawing.Sheets;
using WireSketch.Drawing.Tests.Scenes;
using WireSketch.Language.Kinds;
using Xunit;

namespace WireSketch.Drawing.Tests.Sheets;

public sealed class SheetPlanTests
{
    private static readonly SortedDictionary<SheetKind, int> Limits = new() { [SheetKind.Supply] = 24, [SheetKind.Ground] = 24, [SheetKind.Signal] = 24, [SheetKind.Speakers] = 24 };

    [Theory]
    [InlineData("one-amplifier", true)]
    [InlineData("camper", true)]
    [InlineData("large", false)]
    public void Up_to_27_boxes_are_tried_on_one_sheet(string spec, bool one)
    {
        var wiring = Drawn.Compile(spec).Install!.Wiring;
        Assert.Equal(one, SheetPlan.Whole(wiring, Maker(spec)) is not null);
    }

    [Theory]
    [InlineData("competition")]
    [InlineData("large")]
    public void Every_device_and_every_run_stands_on_a_sheet_and_none_is_larger_than_allowed(string spec)
    {
        var wiring = Drawn.Compile(spec).Install!.Wiring;
        var sheets = SheetPlan.Split(wiring, Maker(spec), Audience.Technician, 1, Limits);
        Assert.Equal(SheetKind.Overview, sheets[0].Kind);
        Assert.Equal(wiring.Runs.Select(r => r.Id).Order(), sheets.Skip(1).SelectMany(s => s.Wires.Select(w => w.Run)).Distinct().Order());
        var shown = sheets.SelectMany(s => s.Devices).Where(d => d.Reference is null).SelectMany(d => d.Subjects).ToHashSet();
        Assert.All(wiring.Gear.Where(g => g is not Protection), g => Assert.Contains(g.Id, shown));
        Assert.All(sheets.Skip(1), s => Assert.InRange(s.Devices.Where(d => d.Gear is not null and not Protection).Sum(d => Clusters.Weight(d.Gear!)), 0, 25 * 4));
    }

    [Theory]
    [InlineData("competition")]
    [InlineData("large")]
    public void A_wire_that_leaves_a_sheet_stands_on_the_sheet_it_goes_to_with_the_same_letter(string spec)
    {
        var wiring = Drawn.Compile(spec).Install!.Wiring;
        var sheets = SheetPlan.Split(wiring, Maker(spec), Audience.Technician, 1, Limits);
        var flags = sheets.SelectMany((s, i) => s.Devices.Where(d => d.Reference is not null).Select(d => (Sheet: i, Run: d.Reference!, Letter: d.Name[0]))).ToArray();
        Assert.All(flags.GroupBy(f => f.Run), g =>
        {
            Assert.True(g.Count() > 1);
            Assert.Single(g.Select(f => f.Letter).Distinct());
        });
        Assert.Equal(flags.Select(f => f.Run).Distinct().Count(), flags.Select(f => f.Letter).Distinct().Count());
    }

    [Fact]
    public void Every_wire_of_a_graph_ends_at_a_terminal_of_the_graph_and_labels_have_room()
    {
        foreach (var sheet in SheetPlan.Split(Drawn.Compile("competition").Install!.Wiring, Maker("competition"), Audience.Technician, 0, Limits))
        {
            var ports = sheet.Graph.Devices.SelectMany(d => d.Ports.Select(p => p.Id)).ToHashSet();
            Assert.Equal(sheet.Graph.Devices.Sum(d => d.Ports.Length), ports.Count);
            for (var i = 0; i < sheet.Wires.Length; i++)
            {
                var link = sheet.Graph.Wires[i];
                Assert.All(link.To.Append(link.From), e => Assert.Contains(e, ports));
                Assert.Equal(sheet.Wires[i].Label.IsEmpty, link.LabelWidth == 0);
                Assert.All(sheet.Wires[i].Label, line => Assert.True(TextSizes.Width(line) <= link.LabelWidth));
            }
        }
    }

    [Theory]
    [InlineData(0, "A")]
    [InlineData(25, "Z")]
    [InlineData(26, "AA")]
    [InlineData(701, "ZZ")]
    [InlineData(702, "AAA")]
    public void References_are_lettered_like_columns(int n, string letter) => Assert.Equal(letter, Reference.LetterOf(n));

    private static SheetMaker Maker(string spec)
    {
        var compiled = Drawn.Compile(spec);
        return new(compiled.Install!.Wiring, new Figures(compiled.Install.Answers, default), compiled.Findings, new());
    }
}
