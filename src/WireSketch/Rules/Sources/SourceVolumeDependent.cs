using WireSketch.Diagnostics;
using WireSketch.Electrical.Responses;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Sources;

/// <summary>A source that turns the bass down when it is turned up.</summary>
internal sealed class SourceVolumeDependent : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "source/volume-dependent",
        Severity.Warning,
        Title: "The response of the source changes with the volume",
        Why: """
            Many vehicle radios lift the bass at low volume, and take it away at high volume to save their small speakers. Behind an
            amplifier that sounds thin when loud, and no fixed equalizer mends it. Take another output, or a processor made to undo it; or
            set the system up at the volume at which it is used.
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
              - { at: radio.front, volume: 10, levels: { 63 Hz: 0 dB, 125 Hz: 0 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
              - { at: radio.front, volume: 30, #! source/volume-dependent
                  levels: { 63 Hz: -8 dB, 125 Hz: -3 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
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
              - { at: radio.front, volume: 10, levels: { 63 Hz: 0 dB, 125 Hz: 0 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
              - { at: radio.front, volume: 30, levels: { 63 Hz: 19 dB, 125 Hz: 20 dB, 500 Hz: 20 dB, 1000 Hz: 20 dB } }
            """);

    private static readonly Decibels Limit = new(3);

    /// <summary>Each curve counts from its own middle, so that the volume itself does not matter.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from place in install.Responses.GroupBy(r => r.At, StringComparer.Ordinal)
        let first = place.First()
        let worst = (from other in place.Skip(1)
                     from band in other.Curve.Levels
                     let before = first.Curve.At(band.At)
                     where before is not null
                     let change = band.Level.Value - before.Value.Value
                     orderby Math.Abs(change) descending, band.At.Value
                     select (Other: other, Band: band.At, Change: change)).FirstOrDefault()
        where worst.Other is not null && Math.Abs(worst.Change) > Limit.Value
        select Report(
            worst.Other.Response.Place,
            $"between volume {first.Volume} and {worst.Other.Volume}, {ResponseCurve.Label(worst.Band)} "
                + $"{(worst.Change < 0 ? "falls" : "rises")} by {new Decibels(Math.Abs(worst.Change)):measured} against the middle of "
                + $"{place.Key}; {Limit:limit} is the most for a source that can be built on",
            "take the signal from another output, or put in a processor that undoes it",
            place.Key, place.Key.Split('.')[0]);
}
