using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Grounds;

/// <summary>The only way back is the shield of a signal cable.</summary>
internal sealed class GroundThroughShield : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "ground/through-shield",
        Severity.Error,
        Title: "The only return runs through a signal shield",
        Why: """
            With its ground lead missing, an amplifier draws its supply current through the shield of the signal cable and through the
            radio. The shield burns, and the radio's input with it. Ground the device before its signal cable is plugged in.
            """,
        new Basis.Reasoning("the shields of a device's signal sockets sit on its ground"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              radio: { is: head unit, outputs: { rear: { level: line, channels: 2, maximum: 2 V } } }
              amp: #! ground/through-shield
                is: amplifier
                supply: { fuse: 20 A }
                wakes-on: [remote]
                input: { line: 0.1 V to 5 V }
                channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } }
              door-left: { is: speaker, coils: 4 ohm, handles: 60 W }
              door-right: { is: speaker, coils: 4 ohm, handles: 60 W }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 25 A, 2: 10 A } }
              dash-bolt: { is: chassis point, surface: bare metal }
              ignition: { is: ignition source, origin: factory, live: accessory }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 6 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: amp.+, wire: 8 AWG red, length: 4 ft }
              P3: { from: fuses.out.2, to: radio.battery, wire: 12 AWG yellow, length: 2 ft }
              C1: { from: ignition, to: radio.accessory, wire: 18 AWG red, length: 2 ft, tap: true }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue/white, length: 6 ft }
              G1: { from: radio.-, to: dash-bolt, wire: 12 AWG black, length: 12 in }
              L1: { from: radio.rear, to: amp.in, wire: line pair, length: 6 ft }
              S1: { from: amp.left, to: door-left, wire: 16 AWG, length: 6 ft }
              S2: { from: amp.right, to: door-right, wire: 16 AWG, length: 6 ft }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              radio: { is: head unit, outputs: { rear: { level: line, channels: 2, maximum: 2 V } } }
              amp:
                is: amplifier
                supply: { fuse: 20 A }
                wakes-on: [remote]
                input: { line: 0.1 V to 5 V }
                channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } }
              door-left: { is: speaker, coils: 4 ohm, handles: 60 W }
              door-right: { is: speaker, coils: 4 ohm, handles: 60 W }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 25 A, 2: 10 A } }
              dash-bolt: { is: chassis point, surface: bare metal }
              ignition: { is: ignition source, origin: factory, live: accessory }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 6 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: amp.+, wire: 8 AWG red, length: 4 ft }
              P3: { from: fuses.out.2, to: radio.battery, wire: 12 AWG yellow, length: 2 ft }
              C1: { from: ignition, to: radio.accessory, wire: 18 AWG red, length: 2 ft, tap: true }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue/white, length: 6 ft }
              G1: { from: radio.-, to: dash-bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: amp.-, to: dash-bolt, wire: 8 AWG black, length: 14 in }
              L1: { from: radio.rear, to: amp.in, wire: line pair, length: 6 ft }
              S1: { from: amp.left, to: door-left, wire: 16 AWG, length: 6 ft }
              S2: { from: amp.right, to: door-right, wire: 16 AWG, length: 6 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from load in install.Wiring.Loads
        where load.ReturnsThroughShield && install.Wiring.IsWired(load.Plus)
        let shield = load.Return.Select(s => s.Conductor).FirstOrDefault(c => c is not null)
        let amps = install.Answers.State(SystemState.FullOutput).Loads.FirstOrDefault(l => l.Path.Gear.Id == load.Gear.Id)?.Amps
        select Report(
            load.Gear.Name.At,
            $"nothing grounds {load.Gear.Id}: its only way back is the shield of "
                + $"{shield?.RunId}{(amps is { Value: > 0 } a ? FindingText.Of($", which would carry {a:measured}") : FindingText.None)}",
            $"add a run from {load.Minus} to a chassis point on bare metal, as thick as its supply",
            load.Gear.Id, load.Minus.Id, shield?.RunId ?? load.Minus.Id);
}
