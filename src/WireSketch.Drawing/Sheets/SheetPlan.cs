using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>
/// Decides which gear and runs go on which sheet: one sheet for a small system; beyond that an overview and a sheet for each
/// circuit, and several for a circuit that is too large for one.
/// </summary>
internal static class SheetPlan
{
    /// <summary>The most boxes for which a single sheet is tried.</summary>
    public const int MostOnOneSheet = 27;

    /// <summary>Up to so many boxes a sheet has room for wide labels.</summary>
    private const int Roomy = 9;

    /// <summary>The whole system on one sheet; null if that has no chance to be read.</summary>
    public static Sheet? Whole(Wiring wiring, SheetMaker maker, LabelForm? form = null)
    {
        var boxes = Boxes(wiring.Gear, wiring.Runs);
        return boxes > MostOnOneSheet * 4
            ? null
            : maker.Make(
                SheetKind.Whole,
                "Wiring diagram",
                wiring.Runs,
                null,
                ImmutableDictionary<string, string>.Empty,
                form ?? Form(boxes));
    }

    /// <summary>An overview and the sheets of each circuit, in order.</summary>
    /// <param name="wiring">The system.</param>
    /// <param name="maker">Makes the sheets.</param>
    /// <param name="audience">For whom.</param>
    /// <param name="coarseness">How much the overview groups.</param>
    /// <param name="limits">The most boxes on one sheet of each circuit.</param>
    /// <param name="apart">Supply and ground on sheets of their own: they share no wire, so that nothing is cut.</param>
    public static ImmutableArray<Sheet> Split(
        Wiring wiring,
        SheetMaker maker,
        Audience audience,
        int coarseness,
        IReadOnlyDictionary<SheetKind, int> limits,
        bool apart)
    {
        var parts = Circuits(wiring, apart).SelectMany(c => Parts(wiring, c.Kind, c.Name, c.Runs, limits[c.Kind])).ToArray();
        var letters = Letters(parts);
        return
        [
            OverviewMaker.Make(wiring, audience, coarseness, maker.MarkRoom),
            .. parts.Select(p =>
                maker.Make(
                    p.Kind,
                    p.Name,
                    p.Runs,
                    p.Members,
                    letters,
                    Form(Boxes(wiring.Gear.Where(g => p.Members.Contains(g.Id)), p.Runs)),
                    p.Hubs)),
        ];
    }

    /// <summary>How much room devices and holders take, in quarters of a box.</summary>
    private static int Boxes(IEnumerable<Gear> gear, IEnumerable<WiredRun> runs) =>
        gear.Where(g => g is not { OnlyProtects: true, Facts.Zone: null }).Sum(Clusters.Weight)
            - (2 * runs.Count(r => r.Holder is not null));

    private static LabelForm Form(int boxes) => boxes <= Roomy * 4 ? LabelForm.Wide : LabelForm.Narrow;

    private static (SheetKind Kind, string Name, ImmutableArray<WiredRun> Runs)[] Circuits(Wiring wiring, bool apart)
    {
        (SheetKind Kind, string Name, ImmutableArray<WiredRun> Runs)[] circuits =
        [
            (SheetKind.Supply, apart ? "Supply" : "Supply and ground", Of(SheetKind.Supply)),
            (SheetKind.Ground, "Ground", Of(SheetKind.Ground)),
            (SheetKind.Signal, "Signal and control", Of(SheetKind.Signal)),
            (SheetKind.Speakers, "Speakers", Of(SheetKind.Speakers)),
        ];
        return [.. circuits.Where(c => !c.Runs.IsEmpty)];

        ImmutableArray<WiredRun> Of(SheetKind kind) => [.. wiring.Runs.Where(r => Circuit(r, apart) == kind)];
    }

    private static SheetKind Circuit(WiredRun run, bool apart) => run.Kind switch
    {
        RunKind.Ground when apart => SheetKind.Ground,
        RunKind.Supply or RunKind.Ground => SheetKind.Supply,
        RunKind.Speaker when run.From.Concat(run.To).Any(e => e.Gear.Drawing.Family == DeviceFamily.Speaker) => SheetKind.Speakers,
        _ => SheetKind.Signal,
    };

    private static IEnumerable<SheetPart> Parts(Wiring wiring, SheetKind kind, string name, ImmutableArray<WiredRun> runs, int limit)
    {
        var hubs = Clusters.Hubs(runs, limit);
        var sets = Clusters.Of(runs, hubs, limit);
        if (kind == SheetKind.Signal)
        {
            // What is plugged in without a run belongs to the signal.
            sets = sets.SetItem(0, sets[0].Union(Unwired(wiring)).ToHashSet(StringComparer.Ordinal));
        }

        for (var i = 0; i < sets.Length; i++)
        {
            var own = sets[i];
            var first = i == 0;
            var title = sets.Length == 1 ? name : string.Create(CultureInfo.InvariantCulture, $"{name}, {i + 1} of {sets.Length}");
            // A run between two hubs stands on the first sheet.
            ImmutableArray<WiredRun> shown = [.. runs.Where(r => Gear(r).Any(own.Contains) || (first && Gear(r).All(hubs.Contains)))];
            yield return new(
                kind,
                title,
                shown,
                own.Union(shown.SelectMany(Gear).Where(hubs.Contains)).ToHashSet(StringComparer.Ordinal),
                hubs);
        }
    }

    private static IEnumerable<string> Gear(WiredRun run) => run.From.Concat(run.To).Select(e => e.Gear.Id);

    private static IEnumerable<string> Unwired(Wiring wiring) =>
        wiring.Gear.Where(c => c.Drawing.PlugsIn && !wiring.Runs.Any(r => Gear(r).Contains(c.Id))).Select(c => c.Id);

    /// <summary>A letter for each run that stands on more than one sheet of its circuit.</summary>
    private static Dictionary<string, string> Letters(SheetPart[] parts)
    {
        var cut = parts.SelectMany(p => p.Runs.Where(r => !Gear(r).All(p.Members.Contains)).Select(r => r.Id))
            .GroupBy(id => id, StringComparer.Ordinal)
            .Select(g => g.Key);
        return cut.Select((id, i) => (id, i)).ToDictionary(p => p.id, p => Reference.LetterOf(p.i), StringComparer.Ordinal);
    }

    private sealed record SheetPart(
        SheetKind Kind, string Name, ImmutableArray<WiredRun> Runs, IReadOnlySet<string> Members, IReadOnlySet<string> Hubs);
}
