using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Routes;

/// <summary>A wire through a metal wall without a grommet.</summary>
internal sealed class RouteNoGrommet : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "route/no-grommet",
        Severity.Error,
        Title: "A wire passes a metal wall without a grommet",
        Why: """
            The edge of a drilled hole is a knife, and the car shakes for years: it cuts through the insulation of a live wire. A grommet or
            gland keeps metal and wire apart, and water and fumes out.
            """,
        new Basis.Published(
            $"33 CFR 183.445(a): protection against abrasion where a conductor passes a bulkhead, structural member or other rigid "
                + $"surface; written for boats, taken here as good practice"),
        Bad: """
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, zone: cabin, power: 60 W }
              bolt: { is: chassis point, zone: cabin, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 10 AWG red 105 C, length: 14 ft, #! route/no-grommet
                    fuse: { rating: 15 A, at: 8 in }, protect: loom }
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
        var order = install.Spec.Zones.Select((zone, i) => (zone.Id, i))
            .DistinctBy(z => z.Id)
            .ToDictionary(z => z.Id, z => z.i, StringComparer.Ordinal);
        foreach (var run in install.Wiring.Runs)
        {
            var places = run.From.Concat(run.To)
                .Select(e => e.Gear.Zone)
                .Where(z => z is not null && order.ContainsKey(z))
                .Select(z => order[z!])
                .ToArray();
            if (places.Length < 2 || Wall(install, places.Min(), places.Max()) is not { } wall || IsGuarded(run))
            {
                continue;
            }

            yield return Report(
                run.Run.Through?.At ?? run.Run.Name.At,
                run.Run.Through is { } through
                    ? FindingText.Of(
                        $"{run.Id} passes from the {wall.Near} to the {wall.Far} by \"{through.Value}\", which names no grommet")
                    : $"{run.Id} passes the metal wall between {wall.Near} and {wall.Far}, and nothing says by what",
                "add through: firewall grommet, or protect: grommet, or name the path whose grommet it uses", run.Id);
        }
    }

    private static (string Near, string Far)? Wall(InstalledSystem install, int from, int to)
    {
        for (var i = from; i < to; i++)
        {
            if (install.Spec.Zones[i].WallTowardsNext)
            {
                return (install.Spec.Zones[i].Id, install.Spec.Zones[i + 1].Id);
            }
        }

        return null;
    }

    private static bool IsGuarded(WiredRun run) =>
        run.Guard is not null || run.Run.Protect.Any(p => p.Value == Covering.Grommet);
}
