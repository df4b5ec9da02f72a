using WireSketch.Documents.Lists;

namespace WireSketch.Tests.Documents.Lists;

public sealed class PartsListTests
{
    private const string Runs = """
        P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in, style: strip }, through: firewall grommet, protect: [loom, tape] }
        G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 14 in, protect: loom }
        R1: { from: switched, to: amp.remote, wire: 18 AWG blue, length: 10 ft, through: firewall grommet }
        S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
        """;

    private static PartsList List(string runs = Runs)
    {
        var install = Built.Of(runs).Install;
        return PartsList.From(install, CutList.From(install));
    }

    [Fact]
    public void What_is_in_the_vehicle_and_points_on_its_body_are_not_bought() =>
        Assert.Equal(["amp (cabin)", "sub (rear)"], List().Lines.Where(l => l.Group == PartGroup.Devices).SelectMany(l => l.Used));

    [Fact]
    public void A_fuse_brings_its_holder_and_one_spare()
    {
        var lines = List().Lines;
        Assert.Equal(
            [("inline holder for a strip fuse, 4 AWG", 1.0), ("fuse, strip, 60 A", 1.0)],
            lines.Where(l => l.Group == PartGroup.Protection).Select(l => (l.Item, l.Quantity)));
        Assert.Equal(("fuse, strip, 60 A", 1.0), lines.Where(l => l.Group == PartGroup.Spares).Select(l => (l.Item, l.Quantity)).Single());
    }

    [Fact]
    public void A_fuse_without_a_style_gets_one_that_can_break_the_computed_fault()
    {
        var install = Built.Of(Runs.Replace(", style: strip", "", StringComparison.Ordinal)).Install;
        var fault = install.Answers.Faults.Where(f => f.Device?.Id == "P1.fuse").Max(f => f.DeviceAmpsAtNear.Value);
        var style =
            List(Runs.Replace(", style: strip", "", StringComparison.Ordinal)).Lines
                .Single(l => l.Group == PartGroup.Spares).Item
                .Split(", ")[1];
        Assert.True(WireSketch.Tables.FuseTable.BreakingOf(WireSketch.Tables.FuseStyles.Words.Find(style))!.Value.Value >= fault, style);
    }

    /// <summary>
    /// Of a 20 A fuse only glass cartridges come in no figure, blades are too small for the fault at the battery: the list says what to
    /// ask for.
    /// </summary>
    [Fact]
    public void A_fuse_that_nobody_knows_to_break_the_fault_says_what_it_must_break()
    {
        var runs = Runs.Replace(
            "fuse: { rating: 60 A, at: 12 in, style: strip }",
            "fuse: { rating: 20 A, at: 2 in }",
            StringComparison.Ordinal);
        var fault = Built.Of(runs).Install.Answers.Faults.Where(f => f.Device?.Id == "P1.fuse").Max(f => f.DeviceAmpsAtNear);
        Assert.True(fault > new WireSketch.Quantities.Amps(1000), $"{fault}");
        Assert.Equal(
            $"must break {fault}: see its sheet",
            List(runs).Lines.Single(l => l.Group == PartGroup.Protection && l.Item.StartsWith("fuse", StringComparison.Ordinal)).Remarks);
    }

    /// <summary>Red for supply and black for ground: common practice, no published source.</summary>
    [Fact]
    public void Supply_and_ground_without_a_color_are_two_lines()
    {
        var lines = List(Runs.Replace("4 AWG red", "4 AWG", StringComparison.Ordinal)
            .Replace("4 AWG black", "auto", StringComparison.Ordinal)).Lines.Where(
            l => l.Group == PartGroup.Wire && l.Item.Contains("usual", StringComparison.Ordinal));
        Assert.Equal(
            [("4 AWG red (usual color)", "P1"), ("4 AWG black (usual color)", "G1")],
            lines.Select(l => (l.Item, string.Join(' ', l.Used))));
    }

    [Fact]
    public void Wires_that_pass_the_wall_together_share_a_grommet()
    {
        var line = List().Lines.Single(l => l.Item == "firewall grommet");
        Assert.Equal((1.0, "P1 R1"), (line.Quantity, string.Join(' ', line.Used)));
    }

    [Fact]
    public void Loom_is_as_long_as_the_runs_it_covers() =>
        Assert.Equal(
            ("P1 G1", 20.08),
            List().Lines.Where(l => l.Item == "loom, 5/8 in (16 mm) inside").Select(l => (string.Join(' ', l.Used), l.Quantity)).Single());

    // Both ends of P1-1, P1-2, G1, R1 and of two cores of S1: twelve.
    [Fact]
    public void Both_ends_of_every_conductor_get_a_terminal()
    {
        var terminals = List().Lines.Where(l => l.Group == PartGroup.Terminals).ToArray();
        Assert.Equal(12, terminals.Sum(l => l.Quantity));
        Assert.Contains(terminals, l => l.Item == "ring terminal, 4 AWG, M8 bolt" && l.Used.Single() == "G1 at bolt");
    }

    [Fact]
    public void A_price_that_is_missing_is_told()
    {
        var list = List();
        Assert.True(list.LacksPrices);
        Assert.Equal(0, list.KnownCost);
    }

    [Fact]
    public void Like_devices_share_a_line_and_quantity_counts()
    {
        var install = Built.Of("G1: { from: amp.-, to: bolt, wire: 4 AWG, length: 1 ft }", "").Install;
        var list = PartsList.From(install, CutList.From(install));
        Assert.All(list.Lines.Where(l => l.Group == PartGroup.Devices), l => Assert.Equal(1, l.Quantity));
        var shipped = Built.Shipped("competition").Install;
        var devices = PartsList.From(shipped, CutList.From(shipped)).Lines.Where(l => l.Group == PartGroup.Devices).ToArray();
        Assert.Contains(devices, l => l.Quantity > 1 && l.Used.Length == (int)l.Quantity);
    }
}
