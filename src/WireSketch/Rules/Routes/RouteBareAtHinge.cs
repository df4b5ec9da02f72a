using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Routes;

/// <summary>A wire that bends with every opening of a door.</summary>
internal sealed class RouteBareAtHinge : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "route/bare-at-hinge",
        Severity.Warning,
        Title: "A wire passes a hinge without a boot or sleeve",
        Why: """
            Every opening of the door bends the wire at the same place and draws it over an edge. The vehicle's own rubber boot, or a sleeve
            with a loop of slack, spreads the bend; finely stranded wire lasts longer.
            """,
        new Basis.Practice(),
        Bad: """
            paths:
              left door: { length: 3 ft, passes: door hinge }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              step-lamp: { is: lamp, power: 5 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: step-lamp.+, wire: 18 AWG red, along: [left door], #! route/bare-at-hinge
                    fuse: { rating: 3 A, at: 8 in } }
              G1: { from: step-lamp.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """,
        Good: """
            paths:
              left door: { length: 3 ft, passes: [door hinge, rubber boot] }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              step-lamp: { is: lamp, power: 5 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: step-lamp.+, wire: 18 AWG red, along: [left door], fuse: { rating: 3 A, at: 8 in } }
              G1: { from: step-lamp.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        from along in run.Route
        let path = along.Path
        where !run.Run.Protect.Any(p => p.Value is Covering.Loom or Covering.Conduit or Covering.Sleeve)
            && !path.Passes.Any(p => PassageWords.Boots.Contains(p.Value))
        let hinge = path.Passes.Select(p => p.Value).FirstOrDefault(p => PassageWords.Hinges.Contains(p))
        where hinge is not null
        select Report(
            along.At, $"{run.Id} follows {path.Id} past the {hinge}, and no boot or sleeve guards it",
            $"add protect: sleeve to {run.Id}, or write passes: [{hinge}, rubber boot] at {path.Id} if there is one", run.Id, path.Id);
}
