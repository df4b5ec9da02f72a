using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.Routes;

/// <summary>Something that must be reached, where nobody can.</summary>
internal sealed class RouteOutOfReach : Rule
{
    private static readonly string[] Buried =
        ["under carpet", "under the carpet", "beneath the carpet", "headliner", "in the pillar", "inside the pillar", "in the sill", "inside the sill", "in the door", "inside the door", "behind the dash", "behind dash", "in the roof", "behind the headunit", "glued", "potted", "foamed", "welded"];

    private static readonly string[] Reachable = ["hatch", "access", "removable", "clips off", "unclips", "lifts", "cover", "panel"];

    public override RuleCard Card { get; } = new(
        Id: "route/out-of-reach",
        Severity.Warning,
        Title: "A fuse, adapter or splice sits where nobody can reach it",
        Why: """
            A fuse that opens at night, on the road, must be found and changed; an adapter or a splice is the first place to look for a
            fault. What lies under carpet or behind the dash is not looked at. If a hatch or a clip gives access, say so in place.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, place: under the carpet, outputs: 1, fuses: { 1: 10 A } } #! route/out-of-reach
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 10 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: fridge.+, wire: 12 AWG red, length: 4 ft }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, place: on the side wall behind its cover, outputs: 1, fuses: { 1: 10 A } }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 10 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: fridge.+, wire: 12 AWG red, length: 4 ft }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from gear in install.Spec.Gear
        where gear is ProtectiveDevice or FuseBlock or DistributionBlock or LevelAdapter or Connector or Relay or LoadResistor && !gear.InVehicle && gear.Facts.Place is not null
        let place = gear.Facts.Place!.Value
        where Buried.Any(b => place.Value.Contains(b, StringComparison.OrdinalIgnoreCase)) && !Reachable.Any(r => place.Value.Contains(r, StringComparison.OrdinalIgnoreCase))
        select Report(place.At, $"the {gear.Kind} {gear.Id} sits {place.Value}, where nobody reaches it", "move it, or say in place what gives access to it", gear.Id);
}
