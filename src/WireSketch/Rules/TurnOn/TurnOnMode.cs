using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.TurnOn;

/// <summary>A switch that stands at something else than what is wired.</summary>
internal sealed class TurnOnMode : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/mode",
        Severity.Error,
        Title: "The wake setting is not what is wired",
        Why: """
            The switch on the device says what it listens to. If it stands at remote and only the offset arrives, or the other way round,
            the device sleeps on, although everything is there.
            """,
        new Basis.Reasoning("follows from the wiring and the setting"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V, passes: [dc offset] }
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } } #! turn-on/mode
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
        let state = TurnOnStates.Of(install, wake)
        where state is TurnOnState.WrongMode or TurnOnState.Unable
        let able = TurnOnStates.WakesOn(wake.Gear)
        let there = wake.Mode is WakeMode.Remote or WakeMode.Accessory ? "dc offset" : "remote"
        let at = TurnOnStates.PlaceOf(wake.Gear)
        select state == TurnOnState.Unable
            ? Report(
                at,
                $"{wake.Gear.Id} is set to wake on {WakeModes.Words[wake.Mode]}, but can wake on "
                    + $"{RunText.List(able.Select(w => WakeModes.Words[w]))} only",
                $"set wake: {WakeModes.Words[able[0]]}, or add {WakeModes.Words[wake.Mode]} to its wakes-on: if its sheet says so",
                wake.Gear.Id)
            : Report(
                at,
                there == "remote"
                    ? FindingText.Of(
                        $"{wake.Gear.Id} waits for {WakeModes.Words[wake.Mode]} at its input, where none arrives; "
                            + $"{RunText.List(wake.ControlSources.Select(t => t.Id))} comes to its remote terminal")
                    : $"{wake.Gear.Id} waits for {WakeModes.Words[wake.Mode]}, and no wire brings it; a DC offset arrives at its input",
                there == "remote"
                    ? "set wake: remote"
                    : $"set wake: dc offset, or run a wire to {TurnOnStates.RemoteOf(install.Wiring, wake.Gear).Id}",
                wake.Gear.Id) with
            {
                Fixes = at.Words == WakeModes.Words[wake.Mode] ? [new($"set wake: {there}", [new(at, there)])] : [],
            };
}
