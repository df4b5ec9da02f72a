using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Energy;

/// <summary>Much is taken, and nobody says what the alternator gives.</summary>
internal sealed class EnergyAlternatorUnknown : Rule
{
    /// <summary>From here on the alternator is in question (common practice, no published source).</summary>
    private static readonly Amps Much = new(30);

    public override RuleCard Card { get; } = new(
        Id: "energy/alternator-unknown",
        Severity.Advice,
        Title: "Nobody says what the alternator gives",
        Why: $"With tens of amperes taken on average the alternator decides whether the battery stays charged. Its rating is stamped on "
            + $"it or stands in the vehicle's papers.",
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah } #! energy/alternator-unknown
              inverter: { is: inverter, power: 600 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 2 AWG red, length: 6 ft, fuse: { rating: 80 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 2 AWG black, length: 12 in }
            """,
        Good: """
            job:
              title: Example
              vehicle: { alternator: 150 A }
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              inverter: { is: inverter, power: 600 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 2 AWG red, length: 6 ft, fuse: { rating: 80 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 2 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var energy = install.Answers.Energy;
        if (energy.AlternatorAtSpeed is null && energy.AverageDemand > Much && install.Starter is { } battery)
        {
            yield return Report(
                battery.Name.At, $"the gear takes {energy.AverageDemand:measured} on average, and nobody says what the alternator gives",
                "add it under job: vehicle: { alternator: 90 A }", battery.Id).With(ValueRole.Limit, Much);
        }
    }
}
