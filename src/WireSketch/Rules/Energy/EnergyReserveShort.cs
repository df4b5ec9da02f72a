using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Energy;

/// <summary>Little time with the engine off.</summary>
internal sealed class EnergyReserveShort : Rule
{
    /// <summary>Common practice, no published source.</summary>
    private static readonly Seconds Least = new(3600);

    public override RuleCard Card { get; } = new(
        Id: "energy/reserve-short",
        Severity.Advice,
        Title: "The battery lasts less than an hour with the engine off",
        Why: """
            People play music at the lake with the engine off and then cannot start. Tell the customer how long it may be, or plan a second
            battery that an isolator parts from the starting battery.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 45 Ah } #! energy/reserve-short
              floodlights: { is: lamp, power: 600 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: floodlights.+, wire: 2 AWG red, length: 6 ft, fuse: { rating: 80 A, at: 8 in } }
              G1: { from: floodlights.-, to: bolt, wire: 2 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              floodlights: { is: lamp, power: 150 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: floodlights.+, wire: 8 AWG red, length: 6 ft, fuse: { rating: 25 A, at: 8 in } }
              G1: { from: floodlights.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var energy = install.Answers.Energy;
        if (energy.Reserve is { } reserve
            && reserve < Least
            && install.Wiring.Starter is { Source: BatterySource source, Gear: var battery })
        {
            yield return Report(
                source.Capacity?.At ?? battery.Name.At,
                $"with the engine off the gear takes {energy.AverageDemand} on average, and {energy.UsableCharge} may be taken from the "
                    + $"batteries: that lasts {new Seconds(Math.Round(reserve.Value / 60) * 60):measured}",
                "tell the customer, or add a battery behind an isolator", battery.Id).With(ValueRole.Limit, Least);
        }
    }
}
