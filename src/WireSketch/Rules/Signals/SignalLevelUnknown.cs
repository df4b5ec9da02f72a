using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>An adapter of unknown output.</summary>
internal sealed class SignalLevelUnknown : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/level-unknown",
        Severity.Advice,
        Title: "Nobody says what comes out of an adapter",
        Why: """
            Without the adapter's output, or its ratio, nothing can be said of the level at the input behind it, nor of the gain to set.
            """,
        new Basis.Reasoning("the output follows from the ratio, or is stated"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              adapter: { is: level adapter, channels: 2 } #! signal/level-unknown
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
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
        from adapter in install.Wiring.Gear
        where adapter.SignalOutputs.Any(o => o is { ChangesLevel: true, Maximum: null, Ratio: null })
            && install.Answers.Signals.Any(s => s.FedBy is not null && ReferenceEquals(SignalFeeds.SourceOf(install, s).Gear, adapter))
        select Report(
            adapter.Name.At,
            $"{adapter.Id} does not say what it puts out, so the level behind it is unknown",
            "add output: with its highest voltage, such as output: 4.5 V, or ratio: with output over input",
            adapter.Id);
}
