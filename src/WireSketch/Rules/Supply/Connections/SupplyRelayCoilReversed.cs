using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>A relay with a diode whose coil is wired the wrong way round.</summary>
internal sealed class SupplyRelayCoilReversed : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/relay-coil-reversed",
        Severity.Error,
        Title: "The coil of a relay with a diode is reversed",
        Why: """
            The diode across the coil swallows the spike when the relay lets go. Reversed it is a dead short across whatever wakes the
            relay: the diode, a radio's remote output or the fuse goes. 86 is the positive side, 85 the ground.
            """,
        new Basis.Published(
            "DIN 72552, as lists of terminal designations quote it: 86 begins the winding, 85 ends it; the diode fixes which is positive"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 20 A, 2: 3 A } }
              switch: { is: switch, rating: 5 A }
              relay: { is: relay, contact: 30 A, coil: 0.15 A, diode: true }
              pump: { is: pump, current: 12 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 6 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: relay.30, wire: 12 AWG red, length: 1 ft }
              P3: { from: relay.87, to: pump.+, wire: 12 AWG red, length: 6 ft }
              C1: { from: fuses.out.2, to: switch.in, wire: 18 AWG red, length: 3 ft }
              C2: { from: switch.out, to: relay.85, wire: 18 AWG yellow, length: 3 ft } #! supply/relay-coil-reversed
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: relay.86, to: bolt, wire: 18 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 20 A, 2: 3 A } }
              switch: { is: switch, rating: 5 A }
              relay: { is: relay, contact: 30 A, coil: 0.15 A, diode: true }
              pump: { is: pump, current: 12 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 6 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: relay.30, wire: 12 AWG red, length: 1 ft }
              P3: { from: relay.87, to: pump.+, wire: 12 AWG red, length: 6 ft }
              C1: { from: fuses.out.2, to: switch.in, wire: 18 AWG red, length: 3 ft }
              C2: { from: switch.out, to: relay.86, wire: 18 AWG yellow, length: 3 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: relay.85, to: bolt, wire: 18 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var wiring = install.Wiring;
        var coils = from gear in install.Spec.Gear
                    from input in gear.PowerInputs
                    where input.Takes is CoilDraw { HasDiode: true }
                    select (gear, wiring.At(gear, input.Plus), wiring.At(gear, input.Minus));
        foreach (var (relay, plus, minus) in coils)
        {
            if (!wiring.IsWired(plus)
                || !wiring.IsWired(minus)
                || !Reaches(wiring, plus, TerminalRoles.IsGround)
                || Reaches(wiring, minus, TerminalRoles.IsGround))
            {
                continue;
            }

            var run = RunText.Of(install, wiring.ConductorsAt[minus.Index][0]);
            var end = run.From.Concat(run.To).First(e => e.Nodes.Contains(minus));
            yield return Report(
                end.At,
                $"{relay.Id} has a diode across its coil: {plus.Shape.Name} must be positive, but {run.Id} feeds {minus.Shape.Name} and "
                    + $"{plus.Shape.Name} goes to ground",
                $"swap the wires at {minus} and {plus}", relay.Id, run.Id);
        }
    }

    private static bool Reaches(Wiring wiring, Terminal start, Func<Terminal, bool> fits) =>
        wiring.NetOf[start.Index].Terminals.Any(fits);
}
