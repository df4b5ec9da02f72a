using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Documents.Reports;

/// <summary>What was measured, beside what was computed.</summary>
internal static class ReadingChapter
{
    public static Chapter Of(InstalledSystem install) => new(
        "readings", "Readings",
        [
            "What was measured on the finished vehicle, beside what the chapters above have. Tolerance: volts 1 % and 0.1 V; amperes 10 "
                + "% and 5 mA; ohms 10 % and 0.1 ohm; a coil whose winding nobody states reads at least 65 % of its nominal value "
                + "(common practice)."
        ],
        [],
        [
            .. install.Spec.Readings.Where(r => r is { At: not null, Reads: not null })
                .Select(r => (Reading: r, Expected: ExpectedReading.Of(install, r)))
                .Select(x => new ReportBuilder()
                    .Told("reads", x.Reading.Reads!.Value.Words, ReportBuilder.Place(x.Reading.Reads.Value.At))
                    .Told(
                        "state",
                        x.Reading.State?.Words ?? SystemStates.WordOf(SystemState.FullOutput),
                        x.Reading.State is { } s ? ReportBuilder.Place(s.At) : "default: full output")
                    .Says("computed", x.Expected?.Words ?? "nothing of that kind", "the chapters above")
                    .Says(
                        "verdict",
                        x.Expected is null ? "cannot be compared" : x.Expected.Fits ? "fits" : "differs",
                        "rule spec/reading-differs")
                    .Of(x.Reading.At!.Value.Value)),
        ]);
}
