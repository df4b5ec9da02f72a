using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Routes;

/// <summary>Something that must be reached, where nobody can.</summary>
internal sealed class RouteOutOfReach : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "route/out-of-reach",
        Severity.Warning,
        Title: "A fuse, adapter or splice sits where nobody can reach it",
        Why: """
            A fuse that opens at night, on the road, must be found and changed; an adapter or a splice is the first place to look for a
            fault. What lies under carpet or behind the dash is not looked at. Where a panel comes off, write reach: panel.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, place: under the carpet, reach: none, outputs: 1, fuses: { 1: 10 A } } #! route/out-of-reach
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
              fuses: { is: fuse block, place: on the side wall behind its cover, reach: panel, outputs: 1, fuses: { 1: 10 A } }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 10 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: fridge.+, wire: 12 AWG red, length: 4 ft }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        (from gear in install.Spec.Gear
         where gear.MustBeReached
             && !gear.InVehicle
             && gear.Facts.Reach is { Value: Reach.None }
         select Report(
             gear.Facts.Reach!.Value.At,
             $"the {gear.Kind} {gear.Id} sits {gear.Facts.Place?.Value ?? "somewhere"}, where nobody reaches it",
             Help,
             gear.Id))
        .Concat(from run in install.Spec.Runs
                where run.Protection is { Reach.Value: Language.Reach.None }
                select Report(
                    run.Protection!.Reach!.Value.At,
                    $"the {(run.Protection.Breaker ? "breaker" : "fuse")} of {run.Id} sits where nobody reaches it",
                    Help,
                    run.Id));

    private const string Help = "move it to where a hand gets at it, or write reach: panel if a panel that comes off gives access";
}
