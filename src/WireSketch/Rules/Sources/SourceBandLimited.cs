using WireSketch.Diagnostics;
using WireSketch.Electrical.Responses;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Sources;

/// <summary>A source without bass or without treble.</summary>
internal sealed class SourceBandLimited : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "source/band-limited",
        Severity.Warning,
        Title: "The source has lost a part of the band",
        Why: """
            An output that was made for a door speaker or a tweeter carries only that band. What is cut off cannot be brought back by an
            amplifier. Take an output that carries the rest as well, or sum several in a processor. Bass should reach down to 60 Hz and
            treble up to 10 kHz within 6 dB of the middle.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            response:
              - { at: radio.front, volume: 20, #! source/band-limited
                  levels: { 40 Hz: -24 dB, 63 Hz: -14 dB, 125 Hz: -4 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            response:
              - { at: radio.front, volume: 20, levels: { 40 Hz: -3 dB, 63 Hz: -1 dB, 125 Hz: 0 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
            """);

    private static readonly Decibels Down = new(6);
    /// <summary>Beyond this a filter is not what shaped the curve (common practice, no published source).</summary>
    private static readonly Decibels FitsWell = new(1.5);

    private static readonly Hertz Bass = new(60);
    private static readonly Hertz Treble = new(10_000);

    /// <summary>Of several volumes the one that reaches farthest counts: a loss that comes with the volume is another finding.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var place in install.Responses.GroupBy(r => r.At, StringComparer.Ordinal))
        {
            var low = place.Select(r => (Response: r, Corner: r.Curve.LowCorner(Down)))
                .Where(x => x.Corner is not null)
                .OrderBy(x => x.Corner!.Value)
                .ToArray();
            if (low.Length == place.Count() && low[0].Corner > Bass)
            {
                yield return Of(place.Key, low[0].Response, low[0].Corner!.Value, "below", Bass, FilterFit.HighPass(low[0].Response.Curve));
            }

            var high = place.Select(r => (Response: r, Corner: r.Curve.HighCorner(Down)))
                .Where(x => x.Corner is not null)
                .OrderByDescending(x => x.Corner!.Value)
                .ToArray();
            if (high.Length == place.Count() && high[0].Corner < Treble)
            {
                yield return Of(
                    place.Key,
                    high[0].Response,
                    high[0].Corner!.Value,
                    "above",
                    Treble,
                    FilterFit.LowPass(high[0].Response.Curve));
            }
        }
    }

    private Finding Of(string place, SourceResponse response, Hertz corner, string side, Hertz wanted, FilterFit? fit) => Report(
        response.Response.Place,
        $"{place} has lost what is {side} {Round(corner):measured} at volume {response.Volume}: {Down} down there, where {wanted:limit} "
            + $"should still be within {Down}{Looks(fit)}",
        "take the signal from an output that carries it, or sum several outputs in a processor",
        place, place.Split('.')[0]);

    /// <summary>What kind of filter it looks like, where one fits well.</summary>
    private static FindingText Looks(FilterFit? fit) =>
        fit is { } f && f.Error <= FitsWell
            ? FindingText.Of(
                $"; it looks like a {(f.IsHighPass ? "high-pass" : "low-pass")} of {f.PerOctave} per octave at {Round(f.Corner)}")
            : FindingText.None;

    private static PrintedValue Round(Hertz hertz) => PrintedValue.Of(hertz, Quantity.Print(hertz, 2));
}
