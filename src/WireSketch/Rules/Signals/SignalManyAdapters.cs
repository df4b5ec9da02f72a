using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>A long row of adapters.</summary>
internal sealed class SignalManyAdapters : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/many-adapters",
        Severity.Advice,
        Title: "The signal changes level more than twice",
        Why: """
            Every change of level adds noise, rolls off a little bass and treble, and is one more thing to set and to fail. A source or a
            processor with the right output makes most of them needless.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              a: { is: level adapter, channels: 2, output: 8 V }
              b: { is: level adapter, channels: 2, output: 6 V }
              c: { is: level adapter, channels: 2, output: 4 V }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } }  }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: a.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: a.out, to: b.in, wire: line pair, length: 2 ft } #! signal/wrong-level
              L2: { from: b.out, to: c.in, wire: line pair, length: 2 ft } #! signal/wrong-level
              L3: { from: c.out, to: amp.in, wire: line pair, length: 9 ft } #! signal/many-adapters
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              a: { is: level adapter, channels: 2, output: 4 V }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: a.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: a.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    private const int Most = 2;

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from signal in install.Answers.Signals
        where signal is { Loops: false, FedBy: not null, LevelChanges: > Most } && !SignalRoles.ChangesLevel(signal.Gear)
        group signal by (signal.Gear.Id, signal.LevelChanges) into alike
        let first = alike.First()
        select Report(
            SignalFeeds.PlaceOf(install.Wiring, first),
            $"the signal passes {first.LevelChanges:measured} adapters on its way from {first.Chain[0].Id} to {first.Gear.Id}: "
                + $"{string.Join(", ", first.Chain.Where(SignalRoles.ChangesLevel).Select(a => a.Id))}",
            "use one adapter with the right output, or a processor that takes the source as it is",
            [first.Gear.Id, .. first.Chain.Where(SignalRoles.ChangesLevel).Select(a => a.Id)]);
}
