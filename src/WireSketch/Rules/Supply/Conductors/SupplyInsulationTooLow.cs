using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Conductors;

/// <summary>A wire that gets hotter than its insulation stands.</summary>
internal sealed class SupplyInsulationTooLow : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/insulation-too-low",
        Severity.Error,
        Title: "The wire gets hotter than its insulation stands",
        Why: """
            Heat of the place and heat of the current add up. Insulation above its rating softens, cracks within a season and lets the
            conductor touch what is near. Choose a higher rating, a thicker wire, or a cooler way.
            """,
        new Basis.Reasoning(
            "temperature of the zone plus the conductor's own heating at full output, against the temperature the insulation is rated for"),
        Bad: """
            zones:
              engine bay: { ambient: 95 C }
              cabin: {}
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              fan: { is: motor, zone: engine bay, current: 10 A }
              strut: { is: chassis point, zone: engine bay, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fan.+, wire: 12 AWG red 80 C, length: 4 ft, #! supply/insulation-too-low
                  fuse: { rating: 15 A, at: 6 in }, protect: loom }
              G1: { from: fan.-, to: strut, wire: 12 AWG black 125 C, length: 12 in }
            """,
        Good: """
            zones:
              engine bay: { ambient: 95 C }
              cabin: {}
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              fan: { is: motor, zone: engine bay, current: 10 A }
              strut: { is: chassis point, zone: engine bay, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fan.+, wire: 12 AWG red 125 C, length: 4 ft, fuse: { rating: 15 A, at: 6 in }, protect: loom }
              G1: { from: fan.-, to: strut, wire: 12 AWG black 125 C, length: 12 in }
            """);

    /// <summary>What carries more than it may is told as that.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from answer in install.Answers.Conductors
        where answer.Temperature > answer.Conductor.Wire.Insulation && !answer.Conductor.IsJumper && !install.IsShorted
            && !(SourceReach.Most(install, answer.Conductor) > answer.Ampacity)
        group answer by answer.Conductor.RunId into ofRun
        select Of(install, ofRun.MaxBy(a => a.Temperature.Value)!);

    private Finding Of(InstalledSystem install, ConductorResult answer)
    {
        var run = RunText.Of(install, answer.Conductor);
        var zone = install.Spec.Zones.FirstOrDefault(z => z.Id == answer.Conductor.ZoneId);
        var amps = SourceReach.Most(install, answer.Conductor);
        var from = zone is null
            ? FindingText.None
            : $" (the {zone.Id} has "
                + $"{zone.AmbientOrDefault:ambient}{(amps is { Value: > 0 } a ? FindingText.Of($", it carries {a}") : FindingText.None)})";
        var rated = answer.Conductor.Wire.InsulationIsAssumed
            ? FindingText.Of($"{answer.Conductor.Wire.Insulation:limit} is assumed for its insulation, as the wire does not say")
            : $"its insulation stands {answer.Conductor.Wire.Insulation:limit}";
        var next = new[] { 90, 105, 125, 150, 200 }.Select(t => new Celsius(t))
            .Where(t => t > answer.Temperature)
            .Select(t => (Celsius?)t)
            .FirstOrDefault();
        return Report(
            RunText.WireAt(run),
            $"{RunText.Full(install, run)} reaches {answer.Temperature:measured}{from}; {rated}",
            next is { } n
                ? $"choose wire rated {n} or more, such as wire: {run.Wire.SizeWords} {n}"
                : "choose a cooler way or a thicker wire",
            run.Id);
    }
}
