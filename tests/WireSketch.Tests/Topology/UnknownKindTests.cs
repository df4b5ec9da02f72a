using WireSketch.Documents;
using WireSketch.Documents.Lists;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Rules;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests.Topology;

/// <summary>A kind of gear that nothing in the product names goes through every stage, and each stage is right about it.</summary>
public sealed class UnknownKindTests
{
    private static readonly Spec Spec = ShopCharger.System();

    private static readonly Wiring Wiring = WiringResolver.Resolve(Spec, SizeChoices.None).Value;

    private static readonly ElectricalResults Results = ElectricalSolver.Solve(Wiring);

    private static readonly InstalledSystem Install = new(Spec, Wiring, Results);

    [Fact]
    public void Its_names_are_found() => Assert.Empty(WiringResolver.Resolve(Spec, SizeChoices.None).Findings.Select(f => f.Message));

    [Fact]
    public void It_feeds_the_lamp_through_its_switch_and_the_fuse()
    {
        var load = Assert.Single(Wiring.Loads);
        Assert.Equal("rack.out", load.Source!.Id);
        Assert.Equal(["rack", "P1-1", "P1.fuse", "P1-2"], load.Supply.Select(s => s.Link?.Id ?? s.Conductor!.Id));
        Assert.Equal("rack.home", Wiring.ReturnOf(load.Source).Id);
        var feed = Assert.Single(Wiring.Feeds);
        Assert.Equal(["P1.fuse"], feed.Conductors.Single(c => c.Conductor.Id == "P1-2").Protections.Select(p => p.Id));
    }

    /// <summary>
    /// By hand: 48 W at 12 V is a lamp of 3 ohm. A resistor of 3 ohm at 13.8 V takes 4.6 A; the wires, fuse, switch and terminations lose
    /// less than 2 %.
    /// </summary>
    [Fact]
    public void It_holds_the_lamp_at_its_own_volts_while_the_switch_is_closed()
    {
        Assert.InRange(Assert.Single(Results.State(SystemState.FullOutput).Loads).Amps.Value, 4.6 * 0.98, 4.6);
        Assert.Equal(0, Assert.Single(Results.State(SystemState.EngineOff).Loads).Amps.Value, 1e-6);
    }

    [Fact]
    public void It_is_bought_by_its_own_words_and_its_wires_end_as_it_says()
    {
        var cuts = CutList.From(Install);
        var lines = PartsList.From(Install, cuts).Lines;
        Assert.Contains(lines, l => l.Item == "shop charger, 13.8 V, 40 A" && l.Group == PartGroup.Devices);
        Assert.Contains(lines, l => l.Item == "ring terminal, 10 AWG, M10 stud" && l.Quantity == 1);
    }

    [Fact]
    public void Papers_warn_of_its_current()
    {
        var papers = PaperSet.From(new Compilation(Spec.File, Spec, Install, [.. RuleBook.Check(Install).Findings]).ForPapers);
        var text = string.Concat(papers.Papers.Where(p => p.Name.EndsWith(".md", StringComparison.Ordinal))
            .Select(p => System.Text.Encoding.UTF8.GetString(p.Bytes.Span)));
        Assert.Contains("rack (cargo) gives current of its own", text, StringComparison.Ordinal);
    }
}
