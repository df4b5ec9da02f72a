using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>A device that never wakes.</summary>
internal sealed class TurnOnMissing : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/missing",
        Severity.Error,
        Title: "Nothing wakes the device",
        Why: """
            A device without a turn-on signal stays silent, and the fault is looked for in the wrong place. It needs a wire from the
            source's remote output, from an accessory circuit, or, if it can, wakes on the offset or the signal at its input.
            """,
        new Basis.Reasoning("follows from the wiring: what the device can wake on, and what arrives there"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } } #! turn-on/missing
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        install.Answers.Wakes.Where(w => TurnOnStates.Of(install, w) == TurnOnState.None).Select(w => Sleeper(install, w))
            .Concat(ControlWires.Switched(install.Wiring).Select(d => Radio(install, d.Gear, d.Accessory)).OfType<Finding>())
            .Concat(ControlWires.Coils(install.Wiring).Select(r => Coil(install, r.Gear, r.Coil)).OfType<Finding>());

    private Finding Sleeper(InstalledSystem install, TurnOnResult wake)
    {
        var remote = TurnOnStates.RemoteOf(install.Wiring, wake.Gear);
        var run = wake.HasControlWire ? ControlWires.RunAt(install.Wiring, remote) : null;
        return Report(
            run is null ? TurnOnStates.PlaceOf(wake.Gear) : SignalFeeds.EndAt(run, wake.Gear),
            run is null
                ? FindingText.Of($"{wake.Gear.Id} waits for {WakeModes.Words[wake.Mode]}, and no wire lands on {remote.Id}")
                : $"{wake.Gear.Id} waits for {WakeModes.Words[wake.Mode]}, and nothing that {run.Id} leads to gives a turn-on signal",
            $"run a wire from a remote output or an accessory circuit to {remote.Id}",
            wake.Gear.Id, run?.Id ?? remote.Id);
    }

    /// <summary>
    /// A relay with something on its contacts needs both ends of its coil; that nothing grounds it is told elsewhere, and so is a wire
    /// from nowhere.
    /// </summary>
    private Finding? Coil(InstalledSystem install, Gear relay, ContactCoil coil)
    {
        var (plus, minus) = (coil.Plus, coil.Minus);
        return relay.InVehicle || install.Wiring.IsWired(plus) || !ControlWires.IsNeeded(install.Wiring, relay) ? null : Report(
            relay.Name.At,
            $"no wire lands on {plus.Id}{(install.Wiring.IsWired(minus) ? "" : $" or {minus.Id}")}, so {relay.Id} never pulls in",
            $"run a wire from a switch or a control output to {plus.Id}",
            relay.Id, plus.Id);
    }

    /// <summary>A new radio needs its accessory wire.</summary>
    private Finding? Radio(InstalledSystem install, Gear radio, Terminal accessory)
    {
        if (radio.InVehicle || !ControlWires.IsUsed(install.Wiring, radio))
        {
            return null;
        }

        var run = ControlWires.RunAt(install.Wiring, accessory);
        return run is not null && !ControlWires.Sources(install, accessory).IsEmpty ? null : Report(
            run is null ? radio.Name.At : SignalFeeds.EndAt(run, radio),
            run is null
                ? FindingText.Of($"no wire lands on {accessory.Id}, so {radio.Id} does not know when to play")
                : $"nothing that {run.Id} leads to gives {radio.Id} an accessory signal",
            $"run a wire from an accessory circuit to {accessory.Id}",
            radio.Id, run?.Id ?? accessory.Id);
    }
}
