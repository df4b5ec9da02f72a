using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Sizing;
using WireSketch.Testing;

namespace WireSketch.Tests.Sizing;

/// <summary>What auto chooses needs little copper, compared with every choice that there is.</summary>
public sealed class LeastCopperTests
{
    private const double SupplyFeet = 17;

    private const double GroundFeet = 14 / 12.0;

    private static readonly string Spec = Examples.BassUpgrade.Replace("400 W", "700 W", StringComparison.Ordinal)
        .Replace("fuse: 40 A", "fuse: 80 A", StringComparison.Ordinal)
        .Replace("wire: 4 AWG red", "wire: {0} red", StringComparison.Ordinal)
        .Replace("rating: 60 A", "rating: 80 A", StringComparison.Ordinal)
        .Replace("wire: 4 AWG black", "wire: {1} black", StringComparison.Ordinal);

    /// <summary>
    /// All pairs of sizes of a supply of 17 ft and a ground of 14 in were tried: none that keeps every rule has a tenth less copper.
    /// </summary>
    [Fact]
    public void No_other_pair_of_sizes_keeps_the_rules_with_much_less_copper()
    {
        var spec = Compiler.Compile(Of("auto", "auto"), FilesInMemory.None).Spec;
        var chosen = AutoSizer.Size(spec).Wires;
        var sizes = SizeLadder.For(spec);
        var least = sizes.SelectMany(p => sizes.Select(g => (Supply: p, Ground: g))).OrderBy(x => Copper(x.Supply, x.Ground))
            .First(x => Keeps(Compiler.Compile(Of(x.Supply.ToString(), x.Ground.ToString()), FilesInMemory.None)));
        Assert.True(
            Copper(chosen["P1"], chosen["G1"]) <= 1.1 * Copper(least.Supply, least.Ground),
            $"{chosen["P1"]} and {chosen["G1"]} for {least}");
    }

    private static bool Keeps(Compilation compiled) => compiled.Findings.All(f => f.Severity <= Severity.Advice);

    private static double Copper(WireSize supply, WireSize ground) => (supply.Area.Value * SupplyFeet) + (ground.Area.Value * GroundFeet);

    private static WireSketch.Text.SourceFile Of(string supply, string ground) =>
        Example.File(Spec.Replace("{0}", supply, StringComparison.Ordinal).Replace("{1}", ground, StringComparison.Ordinal));
}
