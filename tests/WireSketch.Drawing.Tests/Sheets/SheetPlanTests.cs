using WireSketch.Drawing.Sheets;
using WireSketch.Drawing.Tests.Scenes;
using WireSketch.Language.Kinds;
using Xunit;

namespace WireSketch.Drawing.Tests.Sheets;

public sealed class SheetPlanTests
{
    private static readonly SortedDictionary<SheetKind, int> Limits = new()
    {
        [SheetKind.Supply] = 24,
        [SheetKind.Ground] = 24,
        [SheetKind.Signal] = 24,
        [SheetKind.Speakers] = 24
    };

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
    [InlineData("competition", false)]
    [InlineData("competition", true)]
    [InlineData("large", false)]
    public void Every_device_and_every_run_stands_on_a_sheet_and_none_is_larger_than_allowed(string spec, bool apart)
    {
        var wiring = Drawn.Compile(spec).Install!.Wiring;
        var sheets = SheetPlan.Split(wiring, Maker(spec), Audience.Technician, 1, Limits, apart);
        Assert.Equal(SheetKind.Overview, sheets[0].Kind);
        Assert.Equal(wiring.Runs.Select(r => r.Id).Order(), sheets.Skip(1).SelectMany(s => s.Wires.Select(w => w.Run)).Distinct().Order());
        var shown = sheets.SelectMany(s => s.Devices).Where(d => d.Reference is null).SelectMany(d => d.Subjects).ToHashSet();
        Assert.All(wiring.Gear.Where(g => g is not ProtectiveDevice), g => Assert.Contains(g.Id, shown));
        Assert.All(
            sheets.Skip(1),
            s =>
                Assert.InRange(
                    s.Devices.Where(d => d.Gear is not null and not ProtectiveDevice).Sum(d => Clusters.Weight(d.Gear!)),
                    0,
                    25 * 4));
    }

    [Theory]
    [InlineData("competition")]
    [InlineData("large")]
    public void A_wire_that_leaves_a_sheet_stands_on_the_sheet_it_goes_to_with_the_same_letter(string spec)
    {
        var wiring = Drawn.Compile(spec).Install!.Wiring;
        var sheets = SheetPlan.Split(wiring, Maker(spec), Audience.Technician, 1, Limits, false);
        var flags = sheets.SelectMany((s, i) =>
            s.Devices.Where(d => d.Reference is not null).Select(d => (Sheet: i, Run: d.Reference!, Letter: d.Name[0])))
            .ToArray();
        Assert.All(flags.GroupBy(f => f.Run), g =>
        {
            Assert.True(g.Count() > 1);
            Assert.Single(g.Select(f => f.Letter).Distinct());
        });
        Assert.Equal(flags.Select(f => f.Run).Distinct().Count(), flags.Select(f => f.Letter).Distinct().Count());
    }

    [Fact]
    public void Supply_and_ground_apart_share_no_wire_so_that_none_is_cut()
    {
        var sheets = SheetPlan.Split(
            Drawn.Compile("competition").Install!.Wiring,
            Maker("competition"),
            Audience.Technician,
            0,
            Limits,
            true);
        var (supply, ground) = (sheets.Single(s => s.Kind == SheetKind.Supply), sheets.Single(s => s.Kind == SheetKind.Ground));
        Assert.Equal(["Supply", "Ground"], new[] { supply.Name, ground.Name });
        Assert.Empty(supply.Wires.Select(w => w.Run).Intersect(ground.Wires.Select(w => w.Run)));
        Assert.DoesNotContain(supply.Devices.Concat(ground.Devices), d => d.Reference is not null);
    }

    [Theory]
    [InlineData("camper", 10)]
    [InlineData("competition", 10)]
    public void A_flag_stands_for_one_net_so_that_no_two_cores_meet_at_it(string spec, int limit)
    {
        var limits = Limits.Keys.ToDictionary(k => k, _ => limit);
        var flags = 0;
        foreach (var sheet in SheetPlan.Split(Drawn.Compile(spec).Install!.Wiring, Maker(spec), Audience.Technician, 1, limits, false))
        {
            foreach (var flag in sheet.Devices.Where(d => d.Reference is not null)
                .Select(d => sheet.Graph.Devices.Single(b => b.Id == d.Id)))
            {
                var port = Assert.Single(flag.Ports).Id;
                Assert.Single(sheet.Graph.Wires.Where(w => w.To.Append(w.From).Contains(port)).Select(w => w.Net).Distinct());
                flags++;
            }
        }

        Assert.NotEqual(0, flags);
    }

    [Fact]
    public void A_flag_stands_on_its_wire_s_way_and_not_in_a_zone_that_the_wire_never_passes()
    {
        var wiring = Drawn.Compile("camper").Install!.Wiring;
        var zones = wiring.Spec.Zones.Select(z => z.Id).ToList();
        var limits = Limits.Keys.ToDictionary(k => k, _ => 10);
        foreach (var sheet in SheetPlan.Split(wiring, Maker("camper"), Audience.Technician, 0, limits, false))
        {
            foreach (var (device, i) in sheet.Devices.Select((d, i) => (d, i)).Where(d => d.d.Reference is not null))
            {
                var run = wiring.RunsById[device.Reference!];
                var ranks = run.From.Concat(run.To).Select(e => zones.IndexOf(e.Gear.Zone!)).ToArray();
                Assert.InRange(zones.IndexOf(sheet.Graph.Zones[sheet.Graph.Devices[i].Zone].Id), ranks.Min(), ranks.Max());
            }
        }
    }

    [Fact]
    public void Two_lugs_on_one_post_stay_two_and_the_wires_behind_them_apart()
    {
        var sheet = SheetPlan.Whole(Drawn.Compile("two-batteries").Install!.Wiring, Maker("two-batteries"))!;
        var posts = sheet.Graph.Devices.Single(d => d.Id == "rear-battery").Ports
            .Where(p => p.Id.StartsWith("rear-battery.+", StringComparison.Ordinal))
            .Select(p => p.Id)
            .ToArray();
        Assert.Equal(["rear-battery.+", "rear-battery.+#2"], posts.Order(StringComparer.Ordinal));
        var trees = posts.Select(p => sheet.Graph.Wires.Single(w => w.To.Append(w.From).Contains(p)).Net).ToArray();
        Assert.NotEqual(trees[0], trees[1]);
    }

    [Fact]
    public void A_cable_whose_cores_part_fans_out_and_a_wire_to_two_devices_is_joined()
    {
        var sheet = SheetPlan.Whole(Drawn.Compile("two-amplifiers").Install!.Wiring, Maker("two-amplifiers"))!;
        Assert.All(sheet.Wires.Where(w => w.Run == "L1"), w => Assert.True(w.Fans));
        var shared = SheetPlan.Whole(Drawn.Compile("camper").Install!.Wiring, Maker("camper"))!;
        Assert.All(shared.Wires.Where(w => w.Run == "W3"), w => Assert.False(w.Fans));
    }

    [Fact]
    public void Every_wire_of_a_graph_ends_at_a_terminal_of_the_graph_and_labels_have_room()
    {
        foreach (var sheet in SheetPlan.Split(
            Drawn.Compile("competition").Install!.Wiring,
            Maker("competition"),
            Audience.Technician,
            0,
            Limits,
            false))
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
