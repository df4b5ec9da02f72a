using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Rules.Supply;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Sizing;

/// <summary>
/// Chooses a size for every run that says <c>auto</c>. All begin at the thinnest; as long as a rule is broken that a thicker wire
/// would mend, the run that mends it for the least copper grows by one size. Fuses follow the load: the smallest usual rating
/// that carries it with a tenth to spare. The rules are asked about the whole network each time, so the sizes fit each other.
/// </summary>
public static class AutoSizer
{
    /// <summary>Rules that a thicker wire can satisfy.</summary>
    private static readonly ImmutableHashSet<string> MendedByCopper =
    [
        "supply/fuse-above-wire", "supply/reduction-unprotected", "supply/drop", "supply/starved", "supply/gauge-change", "supply/insulation-too-low", "supply/slow-fault",
        "ground/thinner", "ground/overloaded",
    ];

    /// <summary>Rounds after which it gives up; each round makes at least one run thicker by a size.</summary>
    private const int MostRounds = 400;

    /// <summary>Sizes for a spec; none if nothing in it says <c>auto</c>. What no size can mend is left for the rules to say.</summary>
    public static SizeChoices Size(Spec spec)
    {
        var wires = spec.Runs.Where(r => r.Wire is { Auto: true }).Select(r => r.Id).ToImmutableArray();
        var fuses = spec.Runs.Where(r => r.Protection is { Auto: true }).Select(r => r.Id).ToImmutableArray();
        if (wires.IsEmpty && fuses.IsEmpty)
        {
            return SizeChoices.None;
        }

        var sizes = SizeLadder.For(spec);
        var choices = SizeChoices.None with { Wires = SizeChoices.None.Wires.AddRange(wires.Select(w => KeyValuePair.Create(w, sizes[0]))) };

        // Fuses come when the wires are thick enough for the load: before that the currents are those of a starved system.
        var fused = fuses.IsEmpty;
        for (var round = 0; round < MostRounds; round++)
        {
            var install = Solve(spec, choices);
            var better = Grow(install, choices, sizes);
            if (ReferenceEquals(better, choices))
            {
                better = Fuses(install, fuses, choices);
                if (fused && better.Fuses.SequenceEqual(choices.Fuses))
                {
                    break;
                }

                fused = true;
            }

            choices = better;
        }

        return Explained(Trimmed(spec, choices, fuses, sizes), wires, fuses);
    }

    /// <summary>Thicker wire brings more volts and so less current: a fuse that was fitted before may be a rating too large now.</summary>
    private static SizeChoices Trimmed(Spec spec, SizeChoices choices, ImmutableArray<string> fuses, ImmutableArray<WireSize> sizes)
    {
        var anew = Fuses(Solve(spec, choices), fuses, choices with { Fuses = SizeChoices.None.Fuses });
        return ReferenceEquals(Grow(Solve(spec, anew), anew, sizes), anew) ? anew : choices;
    }

    private static Install Solve(Spec spec, SizeChoices choices)
    {
        var wiring = WiringResolver.Resolve(spec, choices).Value;
        return new(spec, wiring, Engine.Solve(wiring));
    }

    /// <summary>For every fuse that says auto, the rating for what flows through its run; it does not shrink while wires grow, so that the choice settles.</summary>
    private static SizeChoices Fuses(Install install, ImmutableArray<string> runs, SizeChoices choices)
    {
        foreach (var id in runs)
        {
            if (install.Wiring.RunsById.GetValueOrDefault(id) is not { } run)
            {
                continue;
            }

            var load = run.Conductors.Select(c => Math.Abs(install.Answers.State(SystemState.FullOutput).Amps[c.Index].Value)).DefaultIfEmpty(0).Max();
            var style = run.Run.Protection!.Style?.Value;
            var fits = Outlasting(install, run, style, FuseSizes.AtLeast(new Amps(Math.Max(1, load / 0.9)), style));
            if (fits is { } rating && rating > choices.Fuses.GetValueOrDefault(id))
            {
                choices = choices with
                {
                    Fuses = choices.Fuses.SetItem(id, rating),
                    Reasons = choices.Reasons.SetItem(id + " fuse", $"{rating}: {new Amps(load)} at full output with a tenth to spare"),
                };
            }
        }

        return choices;
    }

    /// <summary>A rating that stays whole when a load starts: the one that carries the load, or the first above it.</summary>
    private static Amps? Outlasting(Install install, WiredRun run, string? style, Amps? carries)
    {
        if (install.Wiring.Links.FirstOrDefault(l => l.Protects && (run.Holder is null ? run.Conductors.Any(c => c.From.Index == l.B.Index) : ReferenceEquals(l.Gear, run.Holder))) is not { } link)
        {
            return carries;
        }

        var start = FuseBelowSurge.StartOf(install, link);
        var rating = carries;
        while (start.Load is not null && rating is { } r && !FuseBelowSurge.Outlasts(FuseBelowSurge.StyleOf(install, link, r), start.Amps, r))
        {
            rating = FuseSizes.AtLeast(r + new Amps(0.001), style);
        }

        return rating ?? carries;
    }

    /// <summary>Makes thicker, by one size, one run for each broken rule that copper mends; the same choices if there is none.</summary>
    private static SizeChoices Grow(Install install, SizeChoices choices, ImmutableArray<WireSize> sizes)
    {
        var grown = choices;
        foreach (var finding in RuleBook.Check(install).Findings.Where(f => f.Severity > Severity.Advice && MendedByCopper.Contains(f.Rule)))
        {
            var next = Candidates(install, finding).Where(choices.Wires.ContainsKey).Distinct(StringComparer.Ordinal)
                .Select(id => (Id: id, Size: Next(sizes, choices.Wires[id]))).Where(c => c.Size is not null)
                .OrderByDescending(c => Worth(install, c.Id, c.Size!.Value)).FirstOrDefault();
            if (next.Size is { } size)
            {
                grown = grown with { Wires = grown.Wires.SetItem(next.Id, size), Reasons = grown.Reasons.SetItem(next.Id + " wire", finding.Rule) };
            }
        }

        return grown;
    }

    /// <summary>The runs that a finding is about: those it names, and for a device those that carry its current.</summary>
    private static IEnumerable<string> Candidates(Install install, Finding finding) =>
        finding.Subjects.SelectMany(s => install.Wiring.RunsById.ContainsKey(s)
            ? [s]
            : install.Wiring.Loads.Where(l => l.Gear.Id == s).SelectMany(l => l.Supply.Concat(l.Return)).Select(p => p.Conductor?.RunId).OfType<string>());

    /// <summary>Volts won for a litre more of copper; where no current flows, the shortest run counts most.</summary>
    private static double Worth(Install install, string id, WireSize size)
    {
        var run = install.Wiring.RunsById[id];
        var amps = run.Conductors.Select(c => Math.Abs(install.Answers.State(SystemState.FullOutput).Amps[c.Index].Value)).DefaultIfEmpty(0).Max();
        var (now, then) = (run.Wire.Size.Area.Value, size.Area.Value);
        return (amps + 1e-6) * ((1 / now) - (1 / then)) / (then - now);
    }

    private static WireSize? Next(ImmutableArray<WireSize> sizes, WireSize size)
    {
        foreach (var candidate in sizes)
        {
            if (candidate > size)
            {
                return candidate;
            }
        }

        return null;
    }

    private static SizeChoices Explained(SizeChoices choices, ImmutableArray<string> wires, ImmutableArray<string> fuses) => choices with
    {
        Reasons = choices.Reasons
            .SetItems(wires.Where(w => !choices.Reasons.ContainsKey(w + " wire")).Select(w => KeyValuePair.Create(w + " wire", "no rule asks for more than the thinnest size")))
            .SetItems(fuses.Where(f => !choices.Reasons.ContainsKey(f + " fuse")).Select(f => KeyValuePair.Create(f + " fuse", "no rating that is made carries the load"))),
    };
}
