using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Sources;

/// <summary>A recording that is not read.</summary>
internal sealed class SourceResponseUnread : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "source/response-unread",
        Severity.Advice,
        Title: "A measured response is not judged",
        Why: """
            Levels that stand in the spec, or in a file named under csv, are judged. A recording is named for the record only: measure its
            bands with any analyzer and write them.
            """,
        new Basis.Reasoning("only levels are compared"),
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
              - { at: radio.front, volume: 20, wav: front.wav } #! source/response-unread
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
              - { at: radio.front, volume: 20, levels: { 40 Hz: -3 dB, 63 Hz: -1 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from response in install.Spec.Responses
        where response is { Levels.IsEmpty: true, Wav: not null }
        let file = response.Wav!.Value
        select Report(
            file.At,
            $"{file.Value} is not read, so the response at {response.At?.Value ?? "that source"} is not judged",
            "write the levels by band: levels: { 63 Hz: -3 dB, 125 Hz: 0 dB, 1000 Hz: 0 dB }",
            response.At?.Value ?? "response");
}
