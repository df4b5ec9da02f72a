using WireSketch.Documents.Lists;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.Reports;

/// <summary>Fuses and breakers against load, wire and distance.</summary>
internal static class ProtectionChapters
{
    public static Chapter Protection(InstalledSystem install) => new(
        "protection", "Fuses and breakers",
        [
            "A rating is at least the current at full output (above 90 % of it is a point to look at, common practice) and at most what "
                + "the thinnest conductor behind it may carry (33 CFR 183.425 and 183.455).",
            "Distance: wire between the source and the device, 18 in at the most (common practice; 33 CFR 183.455 and 183.460 for boats).",
        ],
        [
            ReportBuilder.Constant(
                "D_max",
                "the most wire ahead of the first device",
                UnprotectedLengths.Limit,
                "rule supply/fuse-too-far, 18 in (common practice)")
        ],
        [.. install.Wiring.Links.Where(l => l.Protects && FuseStyleChoice.IsFitted(install, l)).Select(l => Of(install, l))]);

    private static Calculation Of(InstalledSystem install, InternalConnection link)
    {
        var full = install.Answers.State(SystemState.FullOutput);
        var fed = install.Wiring.Feeds.SelectMany(f => f.Conductors).ToArray();
        var behind = fed.Where(c => c.Protections.Length > 0 && c.Protections[^1].Index == link.Index).ToArray();
        var first = behind.Where(c => c.Protections.Length == 1 && (c.Near.Index == link.A.Index || c.Near.Index == link.B.Index))
            .MinBy(c => c.Distance.Value);
        var weakest = behind.Select(c => install.Answers.Conductors[c.Conductor.Index]).Where(a => a.Ampacity is not null)
            .OrderBy(a => a.Ampacity!.Value.Value).ThenBy(a => a.Conductor.Id, StringComparer.Ordinal).FirstOrDefault();
        var amps = ConductorChapters.Magnitude(full.LinkAmps[link.Index]);
        var w = new ReportBuilder().Told("style", FuseStyleChoice.Of(install, link),
            link.Kind == ConnectionKind.Breaker ? "a breaker, not a fuse" : StyleOrigin(install, link));
        if (link.Rating is not { } rating)
        {
            return w.Says("rating", "unknown", "the spec gives none").Of(link.Id);
        }

        w.Taken(
            "I_n",
            "rating",
            rating,
            install.Sizes.Fuses.ContainsKey(RunOf(link)) ? "chosen: chapter Sizes that were chosen" : Place(link))
            .Taken("I", "current at full output", amps, "chapter Volts and amps: full output")
            .Gives("load", "share of the rating", new Share(amps / rating), "I/I_n");
        if (weakest is not null)
        {
            w.Told("thinnest behind it", weakest.Conductor.Id, "the wiring")
                .Taken("I_allowed", "it may carry", weakest.Ampacity!.Value, "chapter What the conductors may carry")
                .Gives("use", "rating against the wire", new Share(rating / weakest.Ampacity!.Value), "I_n/I_allowed");
        }

        if (first is not null)
        {
            w.Each("L", "wire to the source", first.Through().Select(c => (c.Id, c.Length)), "chapter Resistance of the conductors")
                .Gives("D", "distance from the source", first.Distance, "sum(L)");
        }

        return w.Says(
            "verdict",
            Verdict(amps, rating, weakest?.Ampacity, first?.Distance),
            "compared with the limits above; findings.md has what a rule makes of it")
            .Of(link.Id);
    }

    private static string Verdict(Amps amps, Amps rating, Amps? allowed, Meters? distance)
    {
        var wrong = new[]
        {
            amps > rating ? "below the load" : null, allowed is { } a && rating > a ? "above the wire" : null,
            distance is { } d && d > UnprotectedLengths.Limit + new Meters(0.001) ? "farther than 18 in" : null,
        }.OfType<string>().ToArray();
        return wrong.Length == 0 ? "within the limits" : string.Join(", ", wrong);
    }

    private static string StyleOrigin(InstalledSystem install, InternalConnection link)
    {
        var onRun = link.Join is { FuseMayStandAtRun: true }
            ? install.Wiring.ConductorsAt[link.B.Index].Select(c => install.Wiring.RunsById[c.RunId].Run.Protection?.Style)
                .FirstOrDefault(s => s is not null)
            : null;
        var written = onRun ?? link.Join?.Style;
        return written is { } style ? ReportBuilder.Place(style.At)
            : FuseStyleChoice.ToAskFor(install, link) is { } fault
            ? $"default: no construction made in that rating is known to break {fault}; see the sheet of the one that is bought"
            : "default: the smallest made in that rating that breaks the fault current";
    }

    private static string RunOf(InternalConnection link) => link.Id.Split('.')[0];

    private static string Place(InternalConnection link) => link.At is { } at ? ReportBuilder.Place(at) : "the wiring";
}
