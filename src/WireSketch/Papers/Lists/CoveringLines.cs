using WireSketch.Rules;
using WireSketch.Topology;

namespace WireSketch.Papers.Lists;

/// <summary>Grommets, loom and what else covers wires.</summary>
internal static class CoveringLines
{
    public static IEnumerable<PartLine> Of(Install install, CutList cuts)
    {
        var runs = install.Wiring.Runs;
        foreach (var g in runs.Where(r => r.Run.Through is not null).GroupBy(r => r.Run.Through!.Value.Value))
        {
            yield return new(PartGroup.Covering, g.Key, 1, PartLine.Pieces, null, Ids(g), "bore to suit the wires that share it; drop the line if the vehicle has it");
        }

        var own = runs.Where(r => r.Run.Through is null && r.Run.Protect.Any(p => p.Value == "grommet")).ToArray();
        if (own.Length > 0)
        {
            yield return new(PartGroup.Covering, "grommet", own.Length, PartLine.Pieces, null, Ids(own), "bore to suit the wire");
        }

        foreach (var g in runs.SelectMany(r => r.Run.Protect.Select(p => (Run: r, Cover: p.Value))).Where(x => x.Cover != "grommet").GroupBy(x => x.Cover))
        {
            var length = g.Sum(x => cuts.Lengths.For(x.Run.Length).Value);
            yield return new(
                PartGroup.Covering, g.Key, cuts.Lengths.IsMetric ? Math.Round(length, 2) : Math.Round(length / 0.3048, 2), cuts.Lengths.IsMetric ? "m" : "ft", null,
                Ids(g.Select(x => x.Run)), "if every run has its own; less where runs share it");
        }
    }

    private static System.Collections.Immutable.ImmutableArray<string> Ids(IEnumerable<WiredRun> runs) => [.. runs.Select(r => r.Id)];
}
