using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Routes;

/// <summary>A run of which nobody knows how long it is.</summary>
internal sealed class RouteNoLength : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "route/no-length",
        Severity.Error,
        Title: "A run has neither a length nor a path",
        Why: """
            Drop, fault current, cut list and spool all rest on the length. Measure it along the way the wire will really go, or lay
            the run along named paths whose lengths are known.
            """,
        new Basis.Reasoning("a wire cannot be cut or computed without its length"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory }
              spotlight: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: spotlight.+, wire: 14 AWG red, fuse: { rating: 10 A, at: 6 in } } #! route/no-length
              G1: { from: spotlight.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory }
              spotlight: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: spotlight.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: spotlight.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        where run.Length is null
        select Report(
            run.Run.Name.At,
            run.Run.Along.IsEmpty
                ? FindingText.Of(
                    $"{run.Id} has no length and follows no "
                        + $"path{(install.Spec.Paths.IsEmpty ? "" : ", and none of the paths leads from one of its ends to the "
                            + $"other")}; {run.LengthTaken:assumed} was taken to compute with")
                : $"{run.Id} follows {string.Join(", ", run.Run.Along.Select(a => a.Value))}, of which not every length is known; "
                    + $"{run.LengthTaken:assumed} was taken to compute with",
            run.Run.Along.IsEmpty
                ? "add length: with what you measure along the way, such as length: 9 ft"
                : "give each of these paths a length, or give the run one",
            run.Id);
}
