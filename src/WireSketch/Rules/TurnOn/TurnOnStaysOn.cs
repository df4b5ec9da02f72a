using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>A device that never sleeps.</summary>
internal sealed class TurnOnStaysOn : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/stays-on",
        Severity.Warning,
        Title: "The device stays on with the ignition off",
        Why: """
            A device that is always awake empties a battery within days. A turn-on wire belongs on a circuit that goes dead with the key,
            not on a constant one. What is meant to stay on, an alarm or a fridge, says so: always-live: true.
            """,
        new Basis.Reasoning("follows from the wiring: what wakes the device is live with the ignition off"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } }
              constant: { is: tap point, origin: factory, carries: constant, limit: 5 A }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              R1: { from: constant, to: amp.remote, wire: 18 AWG blue, length: 9 ft } #! turn-on/stays-on
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } }
              switched: { is: tap point, origin: factory, carries: accessory, limit: 5 A }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              R1: { from: switched, to: amp.remote, wire: 18 AWG blue, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var wake in install.Answers.Wakes.Where(w => w.LiveWithIgnitionOff && (!w.Gear.InVehicle || w.HasControlWire)))
        {
            var run = wake.Mode == WakeMode.Always
                ? null
                : ControlWires.RunAt(install.Wiring, TurnOnStates.RemoteOf(install.Wiring, wake.Gear));
            yield return Report(
                run is null ? TurnOnStates.PlaceOf(wake.Gear) : SignalFeeds.EndAt(run, wake.Gear),
                run is null
                    ? FindingText.Of($"{wake.Gear.Id} is set to be always awake")
                    : $"{run.Id} wakes {wake.Gear.Id} from {wake.Source}, which is live with the ignition off",
                run is null
                    ? "set it to wake on remote, or write always-live: true if it is meant to stay on"
                    : "take the wire to an accessory circuit or a remote output, or write always-live: true if it is meant to stay on",
                wake.Gear.Id, run?.Id ?? wake.Gear.Id);
        }

        foreach (var (radio, accessory) in ControlWires.Switched(install.Wiring).Where(d => !d.Gear.Facts.AlwaysLive))
        {
            if (ControlWires.RunAt(install.Wiring, accessory) is { } run
                && ControlWires.Sources(install, accessory, SystemState.Standby).FirstOrDefault(TerminalRoles.IsLiveAlways) is { } source)
            {
                yield return Report(
                    SignalFeeds.EndAt(run, radio),
                    $"{run.Id} brings {source.Id}, which is live with the ignition off, to the accessory terminal of {radio.Id}",
                    "take the wire to an accessory circuit, or write always-live: true if it is meant to stay on",
                    radio.Id, run.Id);
            }
        }
    }
}
