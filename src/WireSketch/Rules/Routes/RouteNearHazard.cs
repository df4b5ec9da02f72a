using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Routes;

/// <summary>A wire along something that must not be touched.</summary>
internal sealed class RouteNearHazard : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "route/near-hazard",
        Severity.Warning,
        Title: "A wire follows a path with a hazard",
        Why: """
            A wire tied to airbag wiring can set an airbag off or keep it from working; beside a fuel line a chafed wire starts a fire; a
            seat rail cuts through anything that lies in its way. Choose another path. Under a seat, conduit fixed clear of the rail will
            do.
            """,
        new Basis.Practice(),
        Bad: """
            paths:
              left sill: { length: 6 ft, hazard: airbag }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, along: [left sill], #! route/near-hazard
                    fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            paths:
              left sill: { length: 6 ft, hazard: airbag }
              right sill: { length: 7 ft }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, along: [right sill], fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        from along in run.Route
        let path = along.Path
        let clear = run.Run.Protect.Any(p => p.Value == Covering.Conduit)
        let hazards = path.Hazard.Select(h => h.Value).Where(h => !(clear && h == Hazard.SeatRail)).Distinct().ToArray()
        where hazards.Length > 0
        select Report(
            along.At, $"{run.Id} follows {path.Id}, where there is: {string.Join(", ", hazards.Select(h => Hazards.Words[h]))}",
            Array.TrueForAll(hazards, h => h == Hazard.SeatRail)
                ? "choose another path, or add protect: conduit, fixed clear of the rail"
                : "choose another path",
            run.Id, path.Id);
}
