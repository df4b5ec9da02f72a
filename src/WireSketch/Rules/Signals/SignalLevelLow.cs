using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>A source that cannot drive an input to full output.</summary>
internal sealed class SignalLevelLow : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/level-low",
        Severity.Warning,
        Title: "The source is too weak for the input",
        Why: """
            Below the least that its gain range takes, the amplifier never reaches its full output, however far the gain is turned up: what
            comes up is noise. A source with a higher output, a line driver, or an amplifier with a more sensitive input mends it.
            """,
        new Basis.Reasoning("highest voltage of the source against the input range that the maker states"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 0.1 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft } #! signal/level-low
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
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
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from signal in install.Answers.Signals
        where signal is { TakesThatLevel: true, Loops: false, Maximum: not null, Accepts: not null }
            && signal.Maximum < signal.Accepts.Value.Least * (1 - 1e-6)
        group signal by (signal.Gear.Id, SignalFeeds.SourceOf(install, signal).Gear?.Id, signal.Maximum) into alike
        let worst = alike.First()
        select Report(
            SignalFeeds.PlaceOf(install.Wiring, worst),
            $"{SignalFeeds.Names(alike)} gets {worst.Maximum:measured} at most from {worst.FedBy}; {worst.Gear.Id} needs "
                + $"{worst.Accepts!.Value.Least:limit} for full output",
            "choose a source or an adapter with a higher output, or put a line driver before the input",
            worst.Gear.Id, SignalFeeds.RunOf(install.Wiring, worst)?.Id ?? worst.Gear.Id);
}
