using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>A source that overdrives an input.</summary>
internal sealed class SignalLevelHigh : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/level-high",
        Severity.Error,
        Title: "The source is too strong for the input",
        Why: """
            What is above the input's range is cut off at the input, where no gain setting helps: it sounds harsh, and clipped signals burn
            tweeters. Some inputs are damaged. Put an adapter or an attenuator between, or use the input that is made for the level.
            """,
        new Basis.Reasoning("highest voltage of the source against the input range that the maker states"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 8 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft } #! signal/level-high
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
            && signal.Maximum > signal.Accepts.Value.Most * (1 + 1e-6)
        group signal by (signal.Gear.Id, SignalFeeds.SourceOf(install, signal).Gear?.Id, signal.Maximum) into alike
        let worst = alike.First()
        select Report(
            SignalFeeds.PlaceOf(install.Wiring, worst),
            $"{SignalFeeds.Names(alike)} gets up to {worst.Maximum:measured} from {worst.FedBy} and takes "
                + $"{worst.Accepts!.Value.Most:limit} at most",
            $"put an adapter or an attenuator between them, or choose an input that takes this level; if the source is limited by its "
                + $"settings, write its real maximum:",
            worst.Gear.Id, SignalFeeds.RunOf(install.Wiring, worst)?.Id ?? worst.Gear.Id);
}
