using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules.Supply;

/// <summary>Rules against published tables: what the table allows must pass, what lies clearly beyond it must not.</summary>
public sealed class PublishedLimitsTests
{
    /// <summary>
    /// 46 CFR 183.340(p), Table 183.340(p): smallest conductor for a 10 % drop at 12 V, by current and one-way length. Rows are taken whose
    /// gauge has a tenth of room, since contacts, fuse and strands are counted here and not there; two gauges thinner must fail.
    /// </summary>
    [Theory]
    [InlineData(5, 60, 12, 14)]
    [InlineData(20, 15, 12, 14)]
    [InlineData(25, 50, 6, 8)]
    public void Ten_percent_drop_agrees_with_the_table_of_46_CFR_183_340(int amps, int feet, int published, int thinner)
    {
        Assert.DoesNotContain(Drop(amps, feet, published), f => f.Rule == "supply/drop");
        Assert.Contains(Drop(amps, feet, thinner), f => f.Rule == "supply/drop");
    }

    /// <summary>
    /// 33 CFR 183.425, Table 5: 12 AWG with 80 C insulation carries 35 A; the next standard rating is warned of, the one after is an
    /// error.
    /// </summary>
    [Theory]
    [InlineData(35, null)]
    [InlineData(40, Severity.Warning)]
    [InlineData(50, Severity.Error)]
    public void A_fuse_may_be_as_large_as_33_CFR_183_425_lets_the_wire_carry(int rating, Severity? severity) =>
        Assert.Equal(severity, Fused(rating, "12 in", "").FirstOrDefault(f => f.Rule == "supply/fuse-above-wire")?.Severity);

    /// <summary>33 CFR 183.425, note 1: 0.78 in engine spaces for 80 C, so 12 AWG carries 27.3 A there.</summary>
    [Theory]
    [InlineData(25, null)]
    [InlineData(30, Severity.Warning)]
    [InlineData(40, Severity.Error)]
    public void The_engine_space_factor_of_33_CFR_183_425_counts(int rating, Severity? severity) =>
        Assert.Equal(
            severity,
            Fused(rating, "12 in", ", zone: engine bay").FirstOrDefault(f => f.Rule == "supply/fuse-above-wire")?.Severity);

    /// <summary>
    /// 18 in is common practice, no published source; 33 CFR 183.455(b) asks for 7 in, or 40 in within a sheath, and 183.460(a) for 72
    /// in: the report names them.
    /// </summary>
    [Theory]
    [InlineData("18 in", false)]
    [InlineData("19 in", true)]
    [InlineData("45 cm", false)]
    [InlineData("47 cm", true)]
    public void The_first_device_sits_within_eighteen_inches(string at, bool fires)
    {
        var finding = Fused(25, at, "").FirstOrDefault(f => f.Rule == "supply/fuse-too-far");
        Assert.Equal(fires, finding is not null);
        Assert.All(
            ["7 in", "40 in", "72 in"],
            words => Assert.True(finding is null || finding.Message.Contains(words, StringComparison.Ordinal)));
    }

    private static IEnumerable<Finding> Drop(int amps, int feet, int gauge) => Compile($$"""
        job:
          title: Example
          vehicle: { rest: 12 V, running: 12 V }
        gear:
          battery: { is: battery, origin: factory, capacity: 200 Ah, internal: 0.1 mohm, rest: 12 V }
          load: { is: general load, current: {{amps}} A, behaves: current }
        runs:
          P1: { from: battery, to: load, wire: 2 x {{gauge}} AWG, length: {{feet}} ft, fuse: { rating: 25 A, style: class T, at: 0 in } }
        """);

    private static IEnumerable<Finding> Fused(int rating, string at, string zone) => Compile($$"""
        gear:
          battery: { is: battery, origin: factory, capacity: 70 Ah{{zone}} }
          pump: { is: pump, current: 5 A }
          bolt: { is: chassis point, surface: bare metal }
        runs:
          P1: { from: battery.+, to: pump.+, wire: 12 AWG red 80 C, length: 8 ft, fuse: { rating: {{rating}} A, at: {{at}} }, protect: loom }
          G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
        """);

    private static IEnumerable<Finding> Compile(string text)
    {
        var compiled = Compiler.Compile(Example.File(text), FilesInMemory.None);
        Assert.NotNull(compiled.Install);
        return compiled.Findings;
    }
}
