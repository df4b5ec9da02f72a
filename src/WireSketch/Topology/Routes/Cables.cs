using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Topology.Routes;

/// <summary>How thick cables are, and how wide what they share must be.</summary>
internal static class Cables
{
    /// <summary>How far an opening or a loom may be filled (common practice, no published source).</summary>
    public static Share MostFilled { get; } = Share.FromPercent(40);

    /// <summary>Inside diameters in which split loom is sold, in inches (common practice, no published source).</summary>
    private static readonly ImmutableArray<LoomSize> Looms =
        [
            .. new[]
            {
                (0.25, "1/4"), (0.375, "3/8"), (0.5, "1/2"), (0.625, "5/8"), (0.75, "3/4"), (1, "1"), (1.25, "1 1/4"), (1.5, "1 1/2"),
                (2, "2")
            }.Select(
                l => new LoomSize(Meters.FromInches(l.Item1), l.Item2))
        ];

    /// <summary>
    /// Outside diameter of one conductor: the copper's own times 1.15 for its strands, and twice a wall of 0.5 mm up to 1 mm², 0.7 mm up to
    /// 6 mm², 1 mm up to 16 mm², 1.5 mm above; a line pair is two cables of 5 mm (common practice, no published source).
    /// </summary>
    public static Meters Outside(WireProperties wire)
    {
        if (wire.IsLinePair)
        {
            return new(0.005);
        }

        var area = wire.Size.Area.Value;
        var wall = area <= 1 ? 0.5 : area <= 6 ? 0.7 : area <= 16 ? 1.0 : 1.5;
        return new(((Math.Sqrt(4 * area / Math.PI) * 1.15) + (2 * wall)) / 1000);
    }

    /// <summary>Round cables that a run is made of.</summary>
    public static int Count(WiredRun run) => run.Wire.IsLinePair ? 2 : Math.Max(run.Wire.Cores, run.From.Sum(e => e.Nodes.Length));

    /// <summary>Sum of the squares of the outside diameters, in m².</summary>
    public static double Squares(WiredRun run) => Count(run) * Outside(run.Wire).Value * Outside(run.Wire).Value;

    /// <summary>Share of a round opening that runs fill.</summary>
    public static Share Fill(IEnumerable<WiredRun> runs, Meters opening) => new(runs.Sum(Squares) / (opening.Value * opening.Value));

    /// <summary>The inside diameter that they need.</summary>
    public static Meters Needs(IEnumerable<WiredRun> runs) => new(Math.Sqrt(runs.Sum(Squares) / MostFilled.Value));

    /// <summary>The smallest size of loom that is wide enough; null if none that is sold is.</summary>
    public static LoomSize? Loom(Meters needs) => Looms.FirstOrDefault(l => l.Inside >= needs);
}

/// <summary>A size in which split loom is sold.</summary>
/// <param name="Inside">Inside diameter.</param>
/// <param name="Inches">The same in inches, as it is said.</param>
internal sealed record LoomSize(Meters Inside, string Inches)
{
    public override string ToString() => $"{Inches} in ({Quantity.PrintIn(Inside, Meters.Units[0], 2)})";
}
