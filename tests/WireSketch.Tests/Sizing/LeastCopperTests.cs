using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Sizing;
using WireSketch.Testing;

namespace WireSketch.Tests.Sizing;

/// <summary>What auto chooses needs little copper, compared with every choice that there is.</summary>
public sealed class LeastCopperTests
{
    private const double SupplyFeet = 40;

    private const double GroundFeet = 3;

    /// <summary>20 A over 43 ft: what may be lost decides, and both runs could be thicker.</summary>
    private const string Spec = """
        gear:
          battery: { is: battery, origin: factory, capacity: 70 Ah }
          pump: { is: pump, current: 20 A, critical: true }
          bolt: { is: chassis point, surface: bare metal }
        runs:
          P1: { from: battery.+, to: pump.+, wire: {0} red, length: 40 ft, fuse: { rating: 30 A, style: blade, at: 6 in } }
          G1: { from: pump.-, to: bolt, wire: {1} black, length: 3 ft }
        """;

    /// <summary>All pairs of sizes of a supply of 40 ft and a ground of 3 ft are tried: none that keeps every rule saves more than one
    /// American size, which has 1.59 times the area of the next but one (ASTM B258: 92^(4/39)).</summary>
    [Fact]
    public void No_pair_that_keeps_the_rules_is_thinner_by_more_than_a_size()
    {
        var spec = Compiler.Compile(Of("auto", "auto"), FilesInMemory.None).Spec;
        var chosen = AutoSizer.Size(spec).Wires;
        var sizes = SizeLadder.For(spec);
        var broken = Broken(chosen["P1"], chosen["G1"]);
        Assert.DoesNotContain("supply/drop", broken);
        Assert.True(chosen["P1"] > sizes[4], $"{chosen["P1"]}: the drop should decide");
        var least = sizes.SelectMany(p => sizes.Select(g => (Supply: p, Ground: g))).OrderBy(x => Copper(x.Supply, x.Ground))
            .First(x => Broken(x.Supply, x.Ground).IsSubsetOf(broken));
        Assert.True(Copper(chosen["P1"], chosen["G1"]) <= 1.6 * Copper(least.Supply, least.Ground), $"{chosen["P1"]} and {chosen["G1"]} for {least}");
    }

    /// <summary>The rules broken, those that no size mends among them.</summary>
    private static HashSet<string> Broken(WireSize supply, WireSize ground) => [.. Compiler.Compile(Of(supply.ToString(), ground.ToString()), FilesInMemory.None)
        .Findings.Where(f => f.Severity > Severity.Advice).Select(f => f.Rule)];

    private static double Copper(WireSize supply, WireSize ground) => (supply.Area.Value * SupplyFeet) + (ground.Area.Value * GroundFeet);

    private static WireSketch.Text.SourceFile Of(string supply, string ground) =>
        Example.File(Spec.Replace("{0}", supply, StringComparison.Ordinal).Replace("{1}", ground, StringComparison.Ordinal));
}
