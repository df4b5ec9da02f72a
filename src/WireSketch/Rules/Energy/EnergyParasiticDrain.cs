using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Energy;

/// <summary>What sleeps empties the battery.</summary>
internal sealed class EnergyParasiticDrain : Rule
{
    /// <summary>Common practice, no published source.</summary>
    private static readonly Seconds Least = new(14 * 86400);

    public override RuleCard Card { get; } = new(
        Id: "energy/parasitic-drain",
        Severity.Warning,
        Title: "The parked vehicle will not start after a holiday",
        Why: """
            Everything that stays connected draws a little, day and night. Two weeks parked must leave a battery that starts the engine.
            Feed from a switched circuit what need not stay live, or part it with a switch or an isolator.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 60 Ah }
              tracker: { is: general load, power: 5 W, always-live: true } #! energy/parasitic-drain
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: tracker.+, wire: 16 AWG red, length: 6 ft, fuse: { rating: 3 A, at: 8 in } }
              G1: { from: tracker.-, to: bolt, wire: 16 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 60 Ah }
              tracker: { is: general load, power: 5 W, duty: 5 %, always-live: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: tracker.+, wire: 16 AWG red, length: 6 ft, fuse: { rating: 3 A, at: 8 in } }
              G1: { from: tracker.-, to: bolt, wire: 16 AWG black, length: 12 in }
            """);

    /// <summary>At the device that draws most while asleep.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var energy = install.Answers.Energy;
        if (energy.StandbyTime is not { } time || time >= Least)
        {
            yield break;
        }

        var drains = install.Answers.State(SystemState.Standby).Loads
            .Where(l => l.Amps.Value > 0)
            .OrderByDescending(l => l.Amps.Value)
            .ToArray();
        var place = drains.Length > 0 ? drains[0].Path.Gear : install.Wiring.Starter?.Gear;
        if (place is not null)
        {
            var most = drains.Length > 1
                ? FindingText.Of(
                    $", most of it {FindingText.List(drains.Take(2).Select(d => FindingText.Of($"{d.Path.Gear.Id} with {d.Amps}")))}")
                : FindingText.None;
            yield return Report(
                place.Name.At,
                $"asleep everything draws {energy.StandbyCurrent}{most}: after {PrintedValue.Of(time, Days(time)):measured} "
                    + $"{Empty(install)}; {PrintedValue.Of(Least, Days(Least)):limit} is the least",
                $"feed {place.Id} from a switched circuit, or part it with a switch", place.Id);
        }
    }

    private static string Days(Seconds time)
    {
        var days = Math.Floor(time.Value / 86400);
        return days == 1 ? "1 day" : $"{Quantity.Digits(days, 3)} days";
    }

    /// <summary>What has gone flat: the battery that starts the engine, or others.</summary>
    private static string Empty(InstalledSystem install)
    {
        return install.Answers.Energy.Standing is { } standing && !standing.Includes(install.Wiring.Starter)
            ? $"{RunText.List(standing.Batteries.Select(b => b.Id))} must be charged"
            : "the battery is too flat to start";
    }
}
