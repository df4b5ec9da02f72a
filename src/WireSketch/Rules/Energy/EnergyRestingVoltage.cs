using WireSketch.Diagnostics;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Energy;

/// <summary>A battery's volts at rest that do not go with the volts that charge it.</summary>
internal sealed class EnergyRestingVoltage : Rule
{
    /// <summary>
    /// Of the running volts; six cells at rest have 12.6 V of 14.2 V, flat 11.5 V (common practice, no published source).
    /// </summary>
    private static readonly Share Least = Share.FromPercent(80);

    public override RuleCard Card { get; } = new(
        Id: "energy/resting-voltage",
        Severity.Warning,
        Title: "The battery's volts at rest do not go with the running volts",
        Why: """
            A charged battery rests a little below what charges it: 12.6 V below 14.2 V, 25.2 V below 28.4 V. Above that it would feed the
            alternator, far below it something boils. Mostly a figure is mistyped, or a 24 V vehicle lacks its running volts.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah, rest: 25.2 V } #! energy/resting-voltage
              pump: { is: pump, current: 4 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 10 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            job: { title: Truck, vehicle: { description: 24 V truck, rest: 25.2 V, running: 28.4 V } }
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah, rest: 25.2 V }
              pump: { is: pump, current: 4 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 10 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var running = install.Wiring.Sources.Select(s => s.Source)
            .OfType<AlternatorSource>()
            .Select(a => (Volts?)Defaults.Regulated(install.Wiring, a))
            .FirstOrDefault()
            ?? Defaults.Running(install.Wiring);
        var written = new List<(string Id, Written<Volts> Volts)>(install.Wiring.Sources
            .Where(s => s.Source is BatterySource { Rest: not null })
            .Select(s => (s.Id, ((BatterySource)s.Source).Rest!.Value)));
        if (install.Spec.Job.Vehicle.Rest is { } own)
        {
            written.Add(("vehicle", own));
        }

        return from rest in written
               where rest.Volts.Value >= running || rest.Volts.Value < running * Least.Value
               select Report(
                   rest.Volts.At,
                   $"{rest.Id} has {rest.Volts:measured} at rest and {running:limit} with the engine running: a charged battery rests a "
                       + $"little below what charges it",
                   $"correct rest:, usually {running * (12.6 / 14.2)} here, or write running: under job: vehicle:", rest.Id);
    }
}
