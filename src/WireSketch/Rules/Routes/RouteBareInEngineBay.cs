using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Routes;

/// <summary>A wire that lies bare in the engine bay.</summary>
internal sealed class RouteBareInEngineBay : Rule
{
    /// <summary>Shorter wires between neighbors need no loom (common practice, no published source).</summary>
    private static readonly Meters Short = Meters.FromInches(18);

    public override RuleCard Card { get; } = new(
        Id: "route/bare-in-engine-bay",
        Severity.Warning,
        Title: "A wire lies in the engine bay without loom or conduit",
        Why: """
            Heat, oil, road dirt and moving parts wear the insulation of a loose wire through, and it lies beside metal all the way. Split
            loom or conduit, tied every hand's breadth and away from exhaust and belts, keeps it whole for years.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, zone: cabin, power: 60 W }
              bolt: { is: chassis point, zone: cabin, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 10 AWG red 105 C, length: 14 ft, #! route/bare-in-engine-bay
                    fuse: { rating: 15 A, at: 8 in }, through: firewall grommet }
              G1: { from: fridge.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, zone: cabin, power: 60 W }
              bolt: { is: chassis point, zone: cabin, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 10 AWG red 105 C, length: 14 ft, fuse: { rating: 15 A, at: 8 in },
                    through: firewall grommet, protect: loom }
              G1: { from: fridge.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var bays = install.Spec.Zones.Where(z => z.IsEngineBay).Select(z => z.Id).ToHashSet(StringComparer.Ordinal);
        return from run in install.Wiring.Runs
               where run.LengthTaken > Short && !run.Run.Protect.Any(p => p.Value is Covering.Loom or Covering.Conduit or Covering.Sleeve)
               let bay = run.From.Concat(run.To).Select(e => e.Gear.Zone).FirstOrDefault(z => z is not null && bays.Contains(z))
               where bay is not null
               select Report(
                   run.Run.Protect.IsEmpty ? run.Run.Name.At : run.Run.Protect[0].At,
                   $"{RunText.Full(install, run)} lies in the {bay} without loom or "
                       + $"conduit{(run.Run.Protect.IsEmpty ? "" : $"; {RunText.List(run.Run.Protect.Select(p => p.Words))} is not "
                           + $"enough there")}",
                   "add protect: loom", run.Id);
    }
}
