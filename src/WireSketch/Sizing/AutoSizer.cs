using System.Collections.Immutable;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Sizing;

/// <summary>
/// Chooses a size for every run that says <c>auto</c>. All begin at the thinnest that their terminals take; as long as a rule is broken
/// that a
/// thicker wire would mend, the run that mends it for the least copper grows by one size. What no size mends asks for no copper: the runs
/// that
/// grew for it shrink again as far as the other rules allow. Fuses follow the load, and the fuses that devices have of their own. The
/// rules are
/// asked about the whole network each time, so the sizes fit each other.
/// </summary>
public sealed class AutoSizer
{
    /// <summary>Rounds after which it gives up; each round makes at least one run thicker by a size.</summary>
    private const int MostRounds = 400;

    private readonly Spec spec;
    private readonly ImmutableArray<string> fuses;
    private readonly ImmutableDictionary<string, ImmutableArray<WireSize>> ladders;

    private AutoSizer(Spec spec, IEnumerable<string> wires, ImmutableArray<string> fuses)
    {
        this.spec = spec;
        this.fuses = fuses;
        var runs = WiringResolver.Resolve(spec, SizeChoices.None).Value.RunsById;
        ladders = wires.ToImmutableDictionary(w => w, w => SizeLadder.For(spec, runs.GetValueOrDefault(w)), StringComparer.Ordinal);
    }

    /// <summary>Sizes for a spec; none if nothing in it says <c>auto</c>. What no size can mend is left for the rules to say.</summary>
    public static SizeChoices Size(Spec spec)
    {
        var wires = spec.Runs.Where(r => r.Wire is { Auto: true }).Select(r => r.Id).ToImmutableArray();
        var fuses = spec.Runs.Where(r => r.Protection is { Auto: true }).Select(r => r.Id).ToImmutableArray();
        return wires.IsEmpty && fuses.IsEmpty ? SizeChoices.None : new AutoSizer(spec, wires, fuses).Choose();
    }

    private SizeChoices Choose()
    {
        var thinnest =
            SizeChoices.None with { Wires = SizeChoices.None.Wires.AddRange(ladders.Select(l => KeyValuePair.Create(l.Key, l.Value[0]))) };
        var grown = Trimmed(Grown(thinnest));
        return Explained(Thinned(SizingTrial.Of(spec, grown)));
    }

    /// <summary>
    /// Wires first, then fuses: before the wires are thick enough for the load, the currents are those of a starved system.
    /// </summary>
    private SizeChoices Grown(SizeChoices choices)
    {
        var fused = fuses.IsEmpty;
        for (var round = 0; round < MostRounds; round++)
        {
            var trial = SizingTrial.Of(spec, choices);
            var better = Grow(trial);
            if (ReferenceEquals(better, choices))
            {
                better = Fused(trial, choices);
                if (fused && better.Fuses.SequenceEqual(choices.Fuses))
                {
                    break;
                }

                fused = true;
            }

            choices = better;
        }

        return choices;
    }

    /// <summary>Thicker wire brings more volts and so less current: a fuse that was fitted before may be a rating too large now.</summary>
    private SizeChoices Trimmed(SizeChoices choices)
    {
        var anew = Fused(SizingTrial.Of(spec, choices), choices with { Fuses = SizeChoices.None.Fuses });
        return ReferenceEquals(Grow(SizingTrial.Of(spec, anew)), anew) ? anew : choices;
    }

    /// <summary>The runs that grew for what no size mends, as thin again as every other rule allows.</summary>
    private SizingTrial Thinned(SizingTrial trial)
    {
        // Of a system that has no operating point the other rules know too little.
        ImmutableArray<string> grown = trial.IsSolved ? [.. Unmended(trial).Select(u => u.Key).Order(StringComparer.Ordinal)] : [];
        for (var before = SizeChoices.None; !ReferenceEquals(before.Wires, trial.Choices.Wires);)
        {
            before = trial.Choices;
            trial = grown.Aggregate(trial, Thinned);
        }

        return trial;
    }

    private SizingTrial Thinned(SizingTrial trial, string run)
    {
        while (Thinner(run, trial.Choices) is { } size)
        {
            var (wires, reasons) = (trial.Choices.Wires.SetItem(run, size), trial.Choices.Reasons);
            var next = SizingTrial.Of(
                spec,
                Fused(trial, trial.Choices with { Wires = wires, Fuses = SizeChoices.None.Fuses, Reasons = reasons.Remove(run) }));
            if (next.NewIn(trial) is { } rule)
            {
                return trial with { Choices = trial.Choices with { Reasons = reasons.SetItem(run, rule) } };
            }

            trial = next;
        }

        return trial;
    }

    /// <summary>The rules that remain broken, by the runs that could have mended them.</summary>
    private ILookup<string, string> Unmended(SizingTrial trial) =>
        trial.Broken.SelectMany(b => trial.Candidates(b.Finding).Where(ladders.ContainsKey).Select(run => (Run: run, b.Rule))).Distinct()
            .ToLookup(x => x.Run, x => x.Rule, StringComparer.Ordinal);

    /// <summary>
    /// For every fuse that says auto, the rating for what flows through its run; it does not shrink while wires grow, so that the choice
    /// settles.
    /// </summary>
    private SizeChoices Fused(SizingTrial trial, SizeChoices choices)
    {
        foreach (var id in fuses)
        {
            if (trial.Install.Wiring.RunsById.GetValueOrDefault(id) is { } run
                && Rating(trial, run) is { } chosen
                && chosen.Rating > choices.Fuses.GetValueOrDefault(id))
            {
                choices = choices with
                {
                    Fuses = choices.Fuses.SetItem(id, chosen.Rating),
                    FuseReasons = choices.FuseReasons.SetItem(id, $"{chosen.Rating}: {chosen.Why}")
                };
            }
        }

        return choices;
    }

    private (Amps Rating, string Why)? Rating(SizingTrial trial, WiredRun run)
    {
        var wiring = trial.Install.Wiring;
        var load = trial.Amps(run);
        var style = run.Run.Protection!.Style?.Value;
        var link = FuseSizes.LinkOf(wiring, run);
        var least = link is null ? new Amps(load.Value / FuseSizes.Comfortable) : FuseSizes.Least(trial.Install, link, load);
        if (FuseSizes.AtLeast(least, style) is not { } carries)
        {
            return null;
        }

        var rating = link is null ? carries : Outlasting(trial.Install, link, style, carries);

        if (link is not null
            && Fixed(trial.Install, link) is { } most
            && rating > most
            && FuseSizes.AtMost(most, style) is { } allowed
            && allowed >= load)
        {
            return (allowed, $"{load} at most, and no more than the fixed wire behind it carries");
        }

        var own = link is null ? null : DeviceFuses.Largest(trial.Install, link);
        return (
            rating,
            rating > carries ? "the lowest that outlasts the start of what it feeds"
                : own is { } o && o.Fuse.Value.Value > load.Value / FuseSizes.Comfortable ? $"{o.Gear.Id} has {o.Fuse.Words} of its own"
                : $"{load} at most with a tenth to spare");
    }

    /// <summary>A rating that stays whole when a load starts: the one that carries the load, or the first above it.</summary>
    private static Amps Outlasting(InstalledSystem install, InternalConnection link, FuseStyle? style, Amps carries)
    {
        var start = StartingCurrents.StartOf(install, link);
        Amps? rating = carries;
        while (start.Load is not null
            && rating is { } r
            && !StartingCurrents.Outlasts(StartingCurrents.StyleOf(install, link, r), start.Amps, r))
        {
            rating = FuseSizes.AtLeast(r + new Amps(0.001), style);
        }

        return rating ?? carries;
    }

    /// <summary>The least that a wire of a size that is not to be chosen carries behind a fuse; null if there is none.</summary>
    private Amps? Fixed(InstalledSystem install, InternalConnection link) =>
        install.Wiring.Feeds.SelectMany(f => f.Conductors)
            .Where(c => c.Protections.LastOrDefault()?.Index == link.Index && !ladders.ContainsKey(c.Conductor.RunId))
            .Select(c => install.Answers.Conductors[c.Conductor.Index].Ampacity).Where(a => a is not null).Min();

    /// <summary>Makes thicker, by one size, one run for each broken rule that copper mends; the same choices if there is none.</summary>
    private SizeChoices Grow(SizingTrial trial)
    {
        var grown = trial.Choices;
        foreach (var (rule, _, finding) in trial.Broken.DistinctBy(b => b.Finding))
        {
            var next = trial.Candidates(finding).Where(ladders.ContainsKey).Distinct(StringComparer.Ordinal)
                .Select(id => (Id: id, Size: Thicker(id, trial.Choices))).Where(c => c.Size is not null)
                .OrderByDescending(c => trial.Worth(c.Id, c.Size!.Value)).FirstOrDefault();
            if (next.Size is { } size)
            {
                grown = grown with { Wires = grown.Wires.SetItem(next.Id, size), Reasons = grown.Reasons.SetItem(next.Id, rule) };
            }
        }

        return grown;
    }

    private WireSize? Thicker(string run, SizeChoices choices) => Beside(run, choices, 1);

    private WireSize? Thinner(string run, SizeChoices choices) => Beside(run, choices, -1);

    private WireSize? Beside(string run, SizeChoices choices, int by)
    {
        var at = ladders[run].IndexOf(choices.Wires[run]) + by;
        return at >= 0 && at < ladders[run].Length ? ladders[run][at] : null;
    }

    private SizeChoices Explained(SizingTrial trial)
    {
        var (choices, reasons, unmended) = (trial.Choices, trial.Choices.Reasons, Unmended(trial));
        foreach (var (run, ladder) in ladders)
        {
            var why = reasons.GetValueOrDefault(run)
                ?? (ladder[0] > SizeLadder.For(spec)[0]
                    ? "the thinnest that its terminals take"
                    : "no rule asks for more than the thinnest size");
            reasons = reasons.SetItem(
                run,
                string.Join("; ", unmended[run].Order(StringComparer.Ordinal).Select(rule => $"no size keeps {rule}").Prepend(why)));
        }

        return choices with
        {
            Reasons = reasons,
            FuseReasons = choices.FuseReasons.SetItems(fuses.Where(f => !choices.FuseReasons.ContainsKey(f))
                .Select(f => KeyValuePair.Create(f, "no rating that is made carries the load"))),
        };
    }
}
