using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical.Readings;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Rules.Specs;

/// <summary>A measurement that does not fit the plan.</summary>
internal sealed class SpecReadingDiffers : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "spec/reading-differs",
        Severity.Warning,
        Title: "A reading differs from what was computed",
        Why: """
            A reading that is far from the computed value means that the car is not wired as the drawing says, that a contact is bad, or
            that a figure in the spec is wrong. Volts may differ by 1 % and 0.1 V, currents and resistances by a tenth, and a speaker reads
            between 65 % of its nominal load and a little above it. Where one added resistance in one run explains all readings of a state
            (least squares), or one broken coil a reading of ohms, the finding names it.
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

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var readings = install.Spec.Readings.Where(r => r is { At: not null, Reads: not null })
            .Select(r => (Reading: r, Expected: ExpectedReading.Of(install, r)))
            .ToArray();
        var told = new HashSet<Reading>(ReferenceEqualityComparer.Instance);
        foreach (var (reading, expected) in readings)
        {
            if (expected is null)
            {
                yield return Unknown(reading);
            }
            else if (!expected.Fits && told.Add(reading))
            {
                var differing = readings.Where(r => r.Expected is { Fits: false }).ToArray();
                var cause = CauseOf(install, reading, [.. readings.Select(r => r.Reading)]);
                var others = cause is null
                    ? []
                    : differing.Where(r => r.Reading != reading && SharesCause(install, r.Reading, reading) && told.Add(r.Reading))
                        .ToArray();
                yield return Differs(reading, expected, cause ?? CoilCause(install, reading)) with
                {
                    Notes = [
                        .. others.Select(o =>
                            new FindingNote(
                                $"{o.Reading.At!.Value.Value} reads {o.Reading.Reads!.Value.Words} where {o.Expected!.Words} was "
                                    + $"computed: the same would explain it",
                                o.Reading.Reads.Value.At))
                    ],
                };
            }
        }
    }

    /// <summary>Readings of volts in one state are explained together.</summary>
    private static bool SharesCause(InstalledSystem install, Reading one, Reading other)
    {
        var state = ExpectedReading.StateOf(install, other).State;
        return ExpectedReading.VoltsOf(install, one, state) is not null && ExpectedReading.VoltsOf(install, other, state) is not null;
    }

    private static Cause? CauseOf(InstalledSystem install, Reading reading, Reading[] all)
    {
        var state = ExpectedReading.StateOf(install, reading);
        if (ExpectedReading.VoltsOf(install, reading, state.State) is null)
        {
            return null;
        }

        var found = new ResistanceFinder(install.Wiring, state).Find([
            .. all.Select(r => ExpectedReading.VoltsOf(install, r, state.State)).OfType<VoltReading>()
        ]);
        return found is { Runs.Length: <= 4 } f
            ? new(
                $"about {Quantity.Print(f.Added, 2)} more in {EnglishText.Or(f.Runs)} would explain it: look at "
                    + $"{(f.Runs.Length == 1 ? "its contacts and its fuse" : "their contacts and fuses")} first",
                f.Runs)
            : null;
    }

    private static Cause? CoilCause(InstalledSystem install, Reading reading) =>
        ExpectedReading.CoilFaultOf(install, reading) is { } words ? new(words, []) : null;

    private static FindingText StateOf(Reading reading) =>
        reading.State is { } s ? FindingText.Of($" {new StatePhrase(s.Words, $"at {s.Words}")}") : FindingText.None;

    private Finding Differs(Reading reading, ExpectedReading expected, Cause? cause) => Report(
        reading.Reads!.Value.At,
        $"{reading.At!.Value.Value} reads "
            + $"{expected.Value:measured}{StateOf(reading)}; {expected.Computed:limit} was computed",
        cause?.Words
            ?? $"measure once more at the terminal itself; then look for a bad contact or a wrong wire between source and there, or mend "
                + $"the figure in the spec that is wrong",
        [reading.At.Value.Value, .. cause?.Runs ?? []]);

    /// <summary>The likeliest single cause, in words, and the runs it may lie in.</summary>
    private sealed record Cause(string Words, ImmutableArray<string> Runs);

    private Finding Unknown(Reading reading) => Report(
        reading.At!.Value.At,
        $"the reading of {reading.Reads!.Value.Words} at {reading.At.Value.Value} cannot be compared: nothing of that kind was computed "
            + $"there",
        "name a terminal for volts, a run or a battery for amperes, a run or an amplifier's channel for ohms",
        Severity.Advice,
        reading.At.Value.Value);
}
