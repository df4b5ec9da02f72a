using WireSketch.Electrical;
using WireSketch.Papers.Lists;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Topology;

namespace WireSketch.Papers.Reports;

/// <summary>Fuses and breakers: against load and wire, and in a short.</summary>
internal static class ProtectionChapters
{
    public static Chapter Protection(Install install) => new(
        "protection", "Fuses and breakers",
        [
            "A rating must be at least the current at full output, and at most what the thinnest conductor behind it may carry (33 CFR 183.425, 183.455).",
            "Distance: length of wire between the source and the device; 18 in at the most (common practice; 33 CFR 183.455 and 183.460 for boats).",
        ],
        [.. install.Wiring.Links.Where(l => l.Protects).Select(l => Of(install, l))]);

    public static Chapter Faults(Install install) => new(
        "faults", "A dead short to the body",
        [
            "Current: the network solved with the short in place. Device: the nearest fuse or breaker that carries it. Opening time: the longest that its standard allows at that multiple of its rating.",
            "Let-through I²·t against what the conductor stands, k²·S² (adiabatic equation of IEC 60364-5-54, good for 5 s).",
        ],
        [.. install.Answers.Faults.Select(f => new Calculation(
            f.Conductor.Id,
            [new("device", f.Device?.Id ?? "none", f.Device?.Rating?.Value, "A", "wiring"), new("can break", f.Breaking is { } b ? Quantity.Print(b) : "unknown", f.Breaking?.Value, "A", f.Device?.Breaking is null ? "table" : "spec")],
            [
                Result.Of("short at the near end", f.Near), Result.Of("short at the far end", f.Far), Result.Of("through the device, far", f.DeviceAmpsAtFar),
                Result.Of("through the device, at its terminal", f.DeviceAmpsAtNear), Result.Of("opens within", f.OpensWithin),
                new("I²t let through", f.LetThrough is { } i ? Quantity.Digits(i, 4) + " A²s" : "unknown", f.LetThrough, "A2s"), new("k²S²", Quantity.Digits(f.Withstand, 4) + " A²s", f.Withstand, "A2s"),
                .. f.UpstreamOpensFirst is { } up ? new[] { Result.Said("may open first", up.Id) } : [],
            ]))]);

    private static Calculation Of(Install install, Link link)
    {
        var full = install.Answers.State(SystemState.FullOutput);
        var fed = install.Wiring.Feeds.SelectMany(f => f.Conductors).Where(c => c.Protections.Length > 0 && c.Protections[^1].Index == link.Index).ToArray();
        var distance = install.Wiring.Feeds.SelectMany(f => f.Conductors).Where(c => c.Protections.LastOrDefault()?.Index == link.Index && c.Near.Index == link.B.Index).Select(c => (double?)c.Distance.Value).Min();
        var weakest = fed.Select(c => install.Answers.Conductors[c.Conductor.Index]).Where(a => a.Ampacity is not null).OrderBy(a => a.Ampacity!.Value.Value).ThenBy(a => a.Conductor.Id, StringComparer.Ordinal).FirstOrDefault();
        return new(
            link.Id,
            [
                new("rating", link.Rating is { } r ? Quantity.Print(r) : "unknown", link.Rating?.Value, "A", link.At is { } at ? Input.Place(install.Spec, at) : "wiring"),
                new("style", link.Kind == LinkKind.Breaker ? "breaker" : FuseStyle.Of(install, link), null, null, link.Style is null ? "default: the smallest made in that rating that breaks the fault current" : "spec"),
            ],
            [
                Result.Of("current at full output", new Amps(Math.Abs(full.LinkAmps[link.Index].Value))), Result.Of<Metres>("wire to the source", distance is { } d ? new Metres(d) : null),
                weakest is null ? Result.Said("thinnest behind it", "none") : new("thinnest behind it", $"{weakest.Conductor.Id}, {Quantity.Print(weakest.Ampacity!.Value)}", weakest.Ampacity.Value.Value, "A"),
            ]);
    }
}
