using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.Signals;

/// <summary>A signal of a level that the input does not take.</summary>
internal sealed class SignalWrongLevel : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/wrong-level",
        Severity.Error,
        Title: "Speaker level on a line input, or the reverse",
        Why: """
            A speaker output is many volts, and both of its sides are driven: on a line input it distorts, may ruin the input, and its minus
            is shorted through the shield. The other way round a line output cannot drive a speaker input loud. A level adapter goes
            between, or the amplifier's own high-level input, if it has one: input: { speaker: … }.
            """,
        new Basis.Reasoning("levels as declared by both devices"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: 18 AWG, length: 9 ft, tap: true } #! signal/wrong-level
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from signal in install.Answers.Signals
        where signal is { FedBy: not null, TakesThatLevel: false, Loops: false }
        group signal by (signal.Gear.Id, SignalFeeds.RunOf(install.Wiring, signal)?.Id) into alike
        let first = alike.First()
        select Report(
            SignalFeeds.PlaceOf(install.Wiring, first),
            $"{SignalFeeds.Names(alike)} takes {(first.Level == SignalLevel.Speaker ? "line" : "speaker")} level, and {first.FedBy} "
                + $"gives {SignalLevels.Words[first.Level!.Value]} "
                + $"level{(first.Maximum is { } most ? FindingText.Of($", up to {most:level}") : FindingText.None)}",
            first.Level == SignalLevel.Speaker
                ? $"put a level adapter between them; or, if the device takes speaker level, say so at its input: speaker: 2 V to 16 V "
                    + $"for an amplifier, level: speaker for a processor"
                : $"bring the line signal to a line input; {first.Gear.Id} is made for speaker level",
            first.Gear.Id, SignalFeeds.RunOf(install.Wiring, first)?.Id ?? first.Gear.Id);
}
