using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>A relay coil without a diode on an electronic output.</summary>
internal sealed class TurnOnRelayFlyback : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/relay-flyback",
        Severity.Advice,
        Title: "A relay without a diode hangs on an electronic output",
        Why: """
            When a coil is let go it answers with a spike of a hundred volts and more, against the transistor that drove it. A diode
            across the coil, stripe to 86, swallows it. Many relays have one built in.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              radio: { is: head unit, origin: factory }
              relay: { is: relay, coil: 0.15 A, contact: 30 A } #! turn-on/relay-flyback
              fan: { is: motor, current: 3 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: relay.30, wire: 14 AWG red 105 C, length: 9 ft, fuse: { rating: 10 A, at: 8 in } }
              P2: { from: relay.87, to: fan.+, wire: 14 AWG red, length: 3 ft }
              R1: { from: radio.remote, to: relay.86, wire: 18 AWG blue, length: 6 ft }
              G1: { from: relay.85, to: bolt, wire: 18 AWG black, length: 12 in }
              G2: { from: fan.-, to: bolt, wire: 14 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              radio: { is: head unit, origin: factory }
              relay: { is: relay, coil: 0.15 A, contact: 30 A, diode: true }
              fan: { is: motor, current: 3 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: relay.30, wire: 14 AWG red 105 C, length: 9 ft, fuse: { rating: 10 A, at: 8 in } }
              P2: { from: relay.87, to: fan.+, wire: 14 AWG red, length: 3 ft }
              R1: { from: radio.remote, to: relay.86, wire: 18 AWG blue, length: 6 ft }
              G1: { from: relay.85, to: bolt, wire: 18 AWG black, length: 12 in }
              G2: { from: fan.-, to: bolt, wire: 14 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from relay in install.Spec.Gear
        where !relay.InVehicle
        from coil in relay.PowerInputs
        where coil.Takes is CoilDraw { HasDiode: false }
        let source = install.Wiring.NetOf[install.Wiring.At(relay, coil.Plus).Index].Terminals.FirstOrDefault(IsElectronic)
        where source is not null
        select Report(
            relay.Name.At,
            $"{source.Id} drives the coil of {relay.Id}, and no diode is noted across it",
            $"fit one across {coil.Minus.Name} and {coil.Plus.Name}, stripe to {coil.Plus.Name}, and write diode: true at {relay.Id}",
            relay.Id,
            source.Id);

    private static bool IsElectronic(Terminal t) =>
        t.Gear is { } gear && gear.TurnOnOutputs.Any(o => o.Terminal == t.Shape);
}
