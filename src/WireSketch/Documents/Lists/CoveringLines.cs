using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;
using WireSketch.Topology.Routes;

namespace WireSketch.Documents.Lists;

/// <summary>Grommets, loom and what else covers wires.</summary>
internal static class CoveringLines
{
    public static IEnumerable<PartLine> Of(InstalledSystem install, CutList cuts)
    {
        var runs = install.Wiring.Runs.Where(r => !r.InVehicle).ToArray();
        foreach (var g in runs.Where(r => r.Guard is not null).GroupBy(r => r.Guard!))
        {
            yield return new(
                PartGroup.Covering,
                g.Key,
                1,
                PartLine.Pieces,
                null,
                Ids(g),
                "bore to suit the wires that share it; drop the line if the vehicle has it");
        }

        var own = runs.Where(r => r.Guard is null && r.Run.Protect.Any(p => p.Value == Covering.Grommet)).ToArray();
        if (own.Length > 0)
        {
            yield return new(PartGroup.Covering, "grommet", own.Length, PartLine.Pieces, null, Ids(own), "bore to suit the wire");
        }

        foreach (var g in runs.SelectMany(r => r.Run.Protect)
            .Select(p => p.Value)
            .Where(c => c != Covering.Grommet)
            .Distinct()
            .SelectMany(c => Pieces(c, runs))
            .GroupBy(p => p.Item))
        {
            var length = g.Sum(p => cuts.Lengths.For(p.Length).Value);
            var shared = g.Any(p => p.Runs.Length > 1);
            yield return new(
                PartGroup.Covering,
                g.Key,
                cuts.Lengths.IsMetric ? Math.Round(length, 2) : Math.Round(length / 0.3048, 2),
                cuts.Lengths.IsMetric ? "m" : "ft",
                null,
                Ids(g.SelectMany(p => p.Runs).DistinctBy(r => r.Id)),
                shared ? "one for all runs that share a path"
                    : g.Any(p => p.OnPath) ? ""
                    : "if every run has its own; less where runs share it");
        }
    }

    /// <summary>Covers of one kind: on paths one for all runs that share it, else one for each run.</summary>
    private static IEnumerable<Piece> Pieces(Covering cover, IEnumerable<WiredRun> all)
    {
        var covered = all.Where(r => r.Run.Protect.Any(p => p.Value == cover)).ToArray();
        foreach (var run in covered.Where(r => r.Route.IsEmpty || r.Route.Any(p => p.Path.Length is null)))
        {
            yield return new(Item(cover, [run]), run.LengthTaken, [run], false);
        }

        foreach (var path in covered.Where(r => r.Route.All(p => p.Path.Length is not null))
            .SelectMany(r => r.Route.Select(p => (p.Path, Run: r)))
            .GroupBy(x => x.Path.Id))
        {
            var runs = path.Select(x => x.Run).ToArray();
            yield return new(Item(cover, runs), path.First().Path.Length!.Value.Value, runs, true);
        }
    }

    private static string Item(Covering cover, WiredRun[] runs)
    {
        var word = Coverings.Words[cover];
        return cover == Covering.Tape ? word
            : Cables.Loom(Cables.Needs(runs)) is { } size ? $"{word}, {size} inside"
            : $"{word}, wider than 2 in inside";
    }

    private sealed record Piece(string Item, Quantities.Meters Length, WiredRun[] Runs, bool OnPath);

    private static System.Collections.Immutable.ImmutableArray<string> Ids(IEnumerable<WiredRun> runs) => [.. runs.Select(r => r.Id)];
}
