using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Rules.Specs;

/// <summary>A measurement that does not fit the plan.</summary>
internal sealed class ReadingDiffers : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "spec/reading-differs",
        Severity.Warning,
        Title: "A reading differs from what was computed",
        Why: """
            A reading that is far from the computed value means that the car is not wired as the drawing says, that a contact is bad, or
            that a figure in the spec is wrong. Volts may differ by 1 % and 0.1 V, currents and resistances by a tenth, and a speaker reads
            between 65 % of its nominal load and a little above it.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            readings:
              - { at: beacon.+, reads: 11.2 V } #! spec/reading-differs
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              beacon: { is: lamp, power: 55 W }
              bolt: { is: chassis point, surface: bare metal }
            readings:
              - { at: beacon.+, reads: 14 V }
            runs:
              P1: { from: battery.+, to: beacon.+, wire: 14 AWG red, length: 9 ft, fuse: { rating: 10 A, at: 6 in } }
              G1: { from: beacon.-, to: bolt, wire: 14 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(Install install) =>
        from reading in install.Spec.Readings
        where reading is { At: not null, Reads: not null }
        let expected = ExpectedReading.Of(install, reading)
        let finding = expected is null ? Unknown(reading) : expected.Fits ? null : Differs(reading, expected)
        where finding is not null
        select finding;

    private Finding Differs(Reading reading, ExpectedReading expected) => Found(
        reading.Reads!.Value.At,
        $"{reading.At!.Value.Value} reads {reading.Reads.Value.Words}{(reading.State is { } s ? $" at {s.Value}" : "")}; {expected.Words} was computed",
        "measure once more at the terminal itself; then look for a bad contact or a wrong wire between source and there, or mend the figure in the spec that is wrong",
        reading.At.Value.Value);

    private Finding Unknown(Reading reading) => Found(
        reading.At!.Value.At,
        $"the reading of {reading.Reads!.Value.Words} at {reading.At.Value.Value} cannot be compared: nothing of that kind was computed there",
        "name a terminal for volts, a run or a battery for amperes, a run or an amplifier's channel for ohms",
        Severity.Advice,
        reading.At.Value.Value);
}
