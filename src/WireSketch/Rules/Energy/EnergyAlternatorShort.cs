using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Rules.Energy;

/// <summary>The alternator cannot give what is taken on average.</summary>
internal sealed class EnergyAlternatorShort : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "energy/alternator-short",
        Severity.Warning,
        Title: "The alternator gives less than is taken",
        Why: """
            What the alternator does not give, the battery does, until it is flat. The vehicle's own load comes first; what is left must
            carry the average of music and of everything else that runs. At idle an alternator gives about half: falling short only there
            is an advice. A larger alternator, less gear, or less time at idle mends it.
            """,
        new Basis.Reasoning(
            $"output as written against base load and average demand; half the rating at idle and 25 A of base load, where nothing is "
                + $"written, are common practice, no published source"),
        Bad: """
            job:
              title: Example
              vehicle: { alternator: 70 A, base-load: 40 A } #! energy/alternator-short
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              inverter: { is: inverter, power: 600 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 2 AWG red, length: 6 ft, fuse: { rating: 80 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 2 AWG black, length: 12 in }
            """,
        Good: """
            job:
              title: Example
              vehicle: { alternator: 150 A, base-load: 40 A }
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
        if (energy.AlternatorAtSpeed is not { } speed || energy.AverageDemand.Value <= 0)
        {
            yield break;
        }

        var wanted = energy.BaseLoad + energy.AverageDemand;
        var sum = FindingText.Of($"{energy.AverageDemand} on average beside the vehicle's own {energy.BaseLoad}");
        if (wanted > speed)
        {
            yield return Report(
                Place(install),
                $"the gear takes {sum}, and the alternator gives {speed:limit} at speed: {wanted - speed} come out of the battery",
                $"fit an alternator of {Round(wanted)} or more, or take less", "vehicle").With(ValueRole.Measured, wanted);
        }
        else if (energy.AlternatorAtIdle is { } idle && wanted > idle)
        {
            yield return Report(
                Place(install),
                $"the gear takes {sum}, and the alternator gives {idle:limit} at idle: {wanted - idle} come out of the battery while "
                    + $"standing",
                "raise the idle, play less while standing, or fit an alternator that gives more at idle",
                Severity.Advice,
                "vehicle").With(ValueRole.Measured, wanted);
        }
    }

    private static Amps Round(Amps amps) => new(Math.Ceiling(amps.Value / 10) * 10);

    private static SourceSpan Place(InstalledSystem install) =>
        install.Wiring.Sources.Where(s => s.Source is AlternatorSource)
            .Select(s => (SourceSpan?)(((AlternatorSource)s.Source).Output?.At ?? s.Gear.Name.At))
            .FirstOrDefault()
        ?? install.Spec.Job.Vehicle.Alternator?.At ?? install.Wiring.Sources.Where(s => s.Source is BatterySource)
            .Select(s => (SourceSpan?)s.Gear.Name.At)
            .FirstOrDefault() ?? install.Spec.File.Start;
}
