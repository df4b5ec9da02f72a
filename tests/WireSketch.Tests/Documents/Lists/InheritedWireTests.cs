using WireSketch.Diagnostics;
using WireSketch.Documents.Lists;
using WireSketch.Language;

namespace WireSketch.Tests.Documents.Lists;

/// <summary>Wire that is in the vehicle already: written, computed and drawn, but neither cut nor bought.</summary>
public sealed class InheritedWireTests
{
    private const string Fitted = """
        P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in }, through: firewall grommet, protect: loom }
        G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 14 in }
        R1: { from: switched, to: amp.remote, wire: 18 AWG blue, length: 10 ft }
        S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG white/blue + white/black, length: 9 ft }
        """;

    private static PartsList Parts(Built built) => PartsList.From(built.Install, CutList.From(built.Install));

    private static string Changed(string run, string more) =>
        Fitted.Replace($"{run}: {{ ", $"{run}: {{ {more}, ", StringComparison.Ordinal);

    [Fact]
    public void A_job_that_was_fitted_before_has_nothing_to_buy_and_nothing_to_cut()
    {
        var built = Built.Of(Fitted, "settings: { origin: existing }");
        Assert.DoesNotContain(built.Result.Findings, f => f.Severity == Severity.Error);
        Assert.Empty(Parts(built).Lines);
        var cuts = CutList.From(built.Install);
        Assert.Empty(cuts.Pieces);
        Assert.Equal(["P1-1", "P1-2", "G1", "R1", "S1"], cuts.InVehicle.Where(p => !p.IsMadeUp).Select(p => p.Id));
        Assert.Contains("Nothing is cut", built.Text("cuts.md"), StringComparison.Ordinal);
        Assert.NotEmpty(Parts(Built.Of(Fitted)).Lines);
    }

    [Fact]
    public void Findings_and_figures_of_fitted_wire_stay()
    {
        var thin = Fitted.Replace("4 AWG red", "12 AWG red", StringComparison.Ordinal);
        string[] Found(string more) =>
        [
            .. Built.Of(thin, more).Result.Findings.Where(f => f.Subjects.Contains("P1") && f.Rule.StartsWith("supply/", StringComparison.Ordinal))
                .Select(f => f.Rule),
        ];
        Assert.NotEmpty(Found(""));
        Assert.Equal(Found(""), Found("settings: { origin: existing }"));
    }

    [Fact]
    public void A_fitted_run_is_left_out_of_every_list_and_named_apart()
    {
        var built = Built.Of(Changed("P1", "origin: existing"));
        var lines = Parts(built).Lines;
        Assert.DoesNotContain(lines, l => l.Used.Any(u => u.StartsWith("P1", StringComparison.Ordinal)));
        Assert.DoesNotContain(lines, l => l.Item.Contains("4 AWG red", StringComparison.Ordinal) || l.Group == PartGroup.Covering);
        Assert.Contains(lines, l => l.Group == PartGroup.Wire && l.Used.Contains("G1"));
        var text = built.Text("cuts.md");
        Assert.True(
            text.IndexOf("P1-2", StringComparison.Ordinal) > text.IndexOf("In the vehicle already, not cut", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("origin: existing", false)]
    [InlineData("origin: factory", false)]
    [InlineData("origin: new", true)]
    public void An_inline_fuse_follows_its_run(string origin, bool bought) =>
        Assert.Equal(bought, Parts(Built.Of(Changed("P1", origin))).Lines.Any(l => l.Group == PartGroup.Protection));

    [Fact]
    public void A_new_fuse_in_a_fitted_wire_is_bought_with_the_two_joints_at_its_holder()
    {
        var runs = Changed("P1", "origin: existing").Replace("{ rating: 60 A,", "{ rating: 60 A, origin: new,", StringComparison.Ordinal);
        var lines = Parts(Built.Of(runs)).Lines;
        Assert.Equal(2, lines.Count(l => l.Group == PartGroup.Protection));
        Assert.Equal(
            ["P1-1 at P1.fuse.in", "P1-2 at P1.fuse.out"],
            lines.Where(l => l.Group == PartGroup.Terminals).SelectMany(l => l.Used).Where(u => u.StartsWith("P1", StringComparison.Ordinal)));
        Assert.DoesNotContain(lines, l => l.Group == PartGroup.Wire && l.Used.Contains("P1"));
    }

    [Fact]
    public void A_fitted_fuse_in_a_new_wire_is_not_bought()
    {
        var runs = Fitted.Replace("{ rating: 60 A,", "{ rating: 60 A, origin: existing,", StringComparison.Ordinal);
        var lines = Parts(Built.Of(runs)).Lines;
        Assert.DoesNotContain(lines, l => l.Group is PartGroup.Protection or PartGroup.Spares);
        Assert.Contains(lines, l => l.Group == PartGroup.Wire && l.Used.Contains("P1"));
    }

    [Fact]
    public void Where_a_new_wire_meets_a_fitted_one_its_joint_is_bought()
    {
        var lines = Parts(Built.Of(Changed("R1", "origin: existing") + "\nR2: { from: switched, to: bolt, wire: 18 AWG, length: 1 ft }")).Lines;
        Assert.Contains(lines, l => l.Group == PartGroup.Terminals && l.Used.Any(u => u.StartsWith("R2 at switched", StringComparison.Ordinal)));
        Assert.DoesNotContain(lines, l => l.Used.Any(u => u.StartsWith("R1", StringComparison.Ordinal)));
    }

    [Fact]
    public void Settings_are_overridden_by_gear_and_runs_that_say_where_they_come_from()
    {
        var spec = Built.Of(Changed("G1", "origin: new"), "settings: { origin: existing }").Result.Spec;
        Assert.Equal(
            [("P1", Origin.Existing), ("G1", Origin.New), ("R1", Origin.Existing), ("S1", Origin.Existing)],
            spec.Runs.Select(r => (r.Id, r.Origin!.Value)));
        Assert.Equal(
            [("battery", Origin.Factory), ("amp", Origin.Existing)],
            spec.Gear.Where(g => g.Id is "battery" or "amp").Select(g => (g.Id, g.Origin)));
    }

    // IEC 60757 (colors of the cores of one cable are joined by plus) through the language's own page; ids and colors are invented.
    [Fact]
    public void A_pair_says_the_color_of_each_core_on_cut_list_and_hand_over()
    {
        var built = Built.Of(Fitted);
        Assert.Contains("2 x 12 AWG white/blue + white/black", built.Text("cuts.md"), StringComparison.Ordinal);
        Assert.Contains("2 x 12 AWG white/blue + white/black", built.Text("parts.md"), StringComparison.Ordinal);
        Assert.Contains("2 x 12 AWG white/blue + white/black", built.Text("handover.md"), StringComparison.Ordinal);
        Assert.Contains("white/blue + white/black", built.Text("cuts.csv"), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("12 AWG white/blue+white/black", "")]
    [InlineData("12 AWG WH/BU + WH/BK 105 C", "")]
    [InlineData("12 AWG red + black + blue", "S1 has 2 cores, but the colors of 3 are written")]
    [InlineData("12 AWG red +", "behind + stands the color of the next core, as in white/blue + white/black")]
    [InlineData("12 AWG red + stripe", "behind + stands the color of the next core, as in white/blue + white/black")]
    public void Colors_of_cores_are_as_many_as_the_cores(string wire, string message) =>
        Assert.Equal(
            message,
            string.Join('|', Built.Of(Fitted.Replace("12 AWG white/blue + white/black", wire, StringComparison.Ordinal)).Result.Findings
                .Where(f => f.Rule == "spec/value")
                .Select(f => f.Message)));

    [Fact]
    public void A_wire_type_has_a_color_for_each_core_too()
    {
        var built = Built.Of(
            Fitted.Replace("12 AWG white/blue + white/black", "door-pair", StringComparison.Ordinal),
            "wires: { door-pair: { size: 18 AWG, color: white/blue + white/black } }");
        Assert.Contains("2 x 18 AWG white/blue + white/black", built.Text("cuts.md"), StringComparison.Ordinal);
    }
}
