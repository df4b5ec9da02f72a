using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>A vehicle circuit that is asked for more than it can spare.</summary>
internal sealed class SupplyTapOverloaded : Rule
{
    /// <summary>Taken where nobody wrote what may be taken (common practice, no published source).</summary>
    private static readonly Amps Assumed = new(5);

    public override RuleCard Card { get; } = new(
        Id: "supply/tap-overloaded",
        Severity.Error,
        Title: "More is taken from a vehicle circuit than it can spare",
        Why: """
            The vehicle's own fuse and wire are chosen for the vehicle's own load. What is added opens that fuse, and with it goes whatever
            else it feeds; or the thin wire heats. Let the circuit only wake a relay and take the current from the battery. It is a warning
            where nobody wrote what may be taken.
            """,
        new Basis.Reasoning("the limit as written; else 5 A, common practice, no published source"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              lighter-feed: { is: ignition source, origin: factory, live: accessory, limit: 8 A }
              inverter: { is: inverter, power: 150 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: lighter-feed, to: inverter.+, wire: 14 AWG yellow, length: 3 ft, tap: true } #! supply/tap-overloaded
              G1: { from: inverter.-, to: bolt, wire: 14 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              lighter-feed: { is: ignition source, origin: factory, live: accessory, limit: 8 A }
              dash-camera: { is: general load, power: 12 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: lighter-feed, to: dash-camera.+, wire: 18 AWG yellow, length: 3 ft, tap: true }
              G1: { from: dash-camera.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """);

    /// <summary>Only what powers a device; what merely wakes one is told by the rules on turning on.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        foreach (var group in install.Answers.State(SystemState.FullOutput).Loads
            .Where(l => state.IsSolved && !install.IsShorted && l.Path is { Source: not null, Input.Takes: not CoilDraw })
            .GroupBy(l => l.Path.Source!.Index))
        {
            var source = group.First().Path.Source!;
            if (install.Wiring.SourceAt(source) is not { Source: VehicleCircuit { Limit: var limit } })
            {
                continue;
            }

            var amps = new Amps(group.Sum(l => l.Amps.Value));
            if (amps > (limit?.Value ?? Assumed))
            {
                var run = group.First().Path.Supply.Select(s => s.Conductor).OfType<Topology.Conductor>().First().RunId;
                yield return Report(
                    install.Wiring.RunsById[run].Run.Name.At,
                    $"{RunText.List(group.Select(l => l.Path.Gear.Id))} take{(group.Count() == 1 ? "s" : "")} {amps:measured} from "
                        + $"{source}, "
                        + $"{(limit is { } l2 ? FindingText.Of($"which can spare {l2:limit}") : $"of which nobody says what it can "
                            + $"spare; {Assumed:limit} is taken")}",
                    $"feed {(group.Count() == 1 ? "it" : "them")} from the battery through a fuse and a relay, and let {source} wake "
                        + $"the relay",
                    limit is null ? Severity.Warning : Severity.Error, run, source.Id);
            }
        }
    }
}
