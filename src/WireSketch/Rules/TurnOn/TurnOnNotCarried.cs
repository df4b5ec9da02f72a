using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.TurnOn;

/// <summary>An offset or signal that is lost on the way.</summary>
internal sealed class TurnOnNotCarried : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/not-carried",
        Severity.Error,
        Title: "What should wake the device does not reach its input",
        Why: """
            Waking by DC offset needs a source that puts out one, a speaker output that plays, and every adapter on the way must pass it on.
            Many adapters block it, line outputs have none, and processors never pass it. Use an adapter that passes it, or run a remote
            wire.
            """,
        new Basis.Reasoning("follows from what the devices on the way are said to pass"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V }
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: dc offset } } #! turn-on/not-carried
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
              adapter: { is: level adapter, channels: 2, output: 4.5 V, passes: [dc offset] }
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: dc offset } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from wake in install.Answers.Wakes
        where TurnOnStates.Of(install, wake) == TurnOnState.NotCarried
        let signal = install.Answers.Signals.First(s => ReferenceEquals(s.Gear, wake.Gear) && TurnOnStates.HasSource(s))
        select Report(
            TurnOnStates.PlaceOf(wake.Gear),
            $"{wake.Gear.Id} waits for a DC offset at its input, and {Blocker(signal)}",
            TurnOnStates.WakesOn(wake.Gear).Contains(WakeMode.Remote) || TurnOnStates.WakesOn(wake.Gear).IsEmpty
                ? $"use an adapter that passes it (passes: [dc offset]), or set wake: remote and run a wire to "
                    + $"{TurnOnStates.RemoteOf(install.Wiring, wake.Gear).Id}"
                : "use an adapter that passes it: passes: [dc offset]",
            [wake.Gear.Id, .. signal.Chain.Skip(1).Select(g => g.Id)]);

    /// <summary>Where it is lost: the source has none, or a device on the way keeps it.</summary>
    private static string Blocker(SignalResult signal) =>
        signal.Chain.Skip(1)
            .FirstOrDefault(g => !g.SignalOutputs.Any(o => o.PassesDcOffset)) is { } blocks
            ? $"{blocks.Id} does not pass it on from {signal.Chain[0].Id}"
            : IsWithoutOffset(signal.Chain[0]) ? $"{signal.Chain[0].Id} has none on its speaker outputs"
            : $"{signal.FedBy} carries none";

    /// <summary>A source whose speaker outputs are known to carry none.</summary>
    private static bool IsWithoutOffset(Gear source) =>
        source.SignalOutputs.Any(o => o is { DrivesSpeakers: true, Amplifies: null, HasDcOffset: false });
}
