using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Specs;

/// <summary>A run whose length is not that of its path.</summary>
internal sealed class SpecLengthDiffers : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "spec/length-differs",
        Severity.Warning,
        Title: "Length and path of a run differ",
        Why: """
            One of the two was measured wrongly, or belongs to another run. The written length is used: if it is too short, the cable does
            not reach.
            """,
        new Basis.Practice(),
        Bad: """
            paths:
              left sill: { length: 8 ft }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, along: [left sill], length: 4 ft, #! spec/length-differs
                    fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            paths:
              left sill: { length: 8 ft }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, along: [left sill], length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    private const double Limit = 0.2;

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var paths = install.Spec.Paths.ToDictionary(p => p.Id, StringComparer.Ordinal);
        foreach (var run in install.Wiring.Runs.Where(r => r.Run.Length is not null && !r.Run.Along.IsEmpty))
        {
            var along = run.Run.Along.Select(a => paths.GetValueOrDefault(a.Value)?.Length?.Value).ToArray();
            var (length, path) = (run.Run.Length!.Value.Value, new Meters(along.Sum(l => l?.Value ?? 0)));
            if (along.All(l => l is not null) && Math.Abs(length.Value - path.Value) > Limit * Math.Max(length.Value, path.Value))
            {
                yield return Report(
                    RunText.LengthAt(run),
                    $"{run.Id} is {run.Run.Length.Value:measured} long, and {RunText.List(run.Run.Along.Select(a => a.Value))} "
                        + $"make{(run.Run.Along.Length == 1 ? "s" : "")} {RunText.Measure(install, path):limit}",
                    "measure again; leave one of them out if the other is right",
                    run.Id);
            }
        }
    }
}
