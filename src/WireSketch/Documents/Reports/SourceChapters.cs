using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Documents.Reports;

/// <summary>Loads on the sources of the signal, and volts between the grounds of a chain.</summary>
internal static class SourceChapters
{
    public static Chapter Loads(InstalledSystem install) => new(
        "source-loads", "Loads on the sources",
        [
            "A source that checks for a load must see one of about the stated value; a tenth more is within the tolerance of a "
                + "resistor. What a load resistor turns into heat at the highest voltage of the source stays below its rating, and "
                + "better below half of it (common practice).",
        ],
        [],
        [
            .. install.Answers.Channels.Select(c => (Channel: c, Needed: c.Output.MutesWithoutLoad))
                .Where(c => c.Needed is not null)
                .Select(c => Seen(c.Channel, c.Needed!.Value)),
            .. install.Wiring.Gear.OfType<LoadResistor>().Where(r => r.Resistance is not null).Select(r => Heat(install, r)),
        ]);

    public static Chapter Grounds(InstalledSystem install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        return new(
            "grounds", "Volts between the grounds of a chain",
            [
                "Devices of one signal chain that are grounded at different points: what lies between their ground terminals at full "
                    + "output adds to the signal of an unbalanced input."
            ],
            [
                ReportBuilder.Constant(
                    "U_max",
                    "the most between them",
                    GroundPairs.Limit,
                    "rule ground/potential-difference, 10 mV (common practice)")
            ],
            [
                .. install.GroundPairs.DistinctBy(p => (p.From.Gear.Id, p.To.Gear.Id))
                    .Where(p => state.Volts[p.From.Minus.Index] is not null && state.Volts[p.To.Minus.Index] is not null)
                    .Select(p => new ReportBuilder()
                        .Told("grounded at", $"{GroundPaths.PointOf(p.From)!.Id} and {GroundPaths.PointOf(p.To)!.Id}", "the wiring")
                        .Taken(
                            "U_a",
                            "ground of the first against the body",
                            state.Volts[p.From.Minus.Index]!.Value,
                            "chapter Volts of the terminals against the body",
                            ReportBuilder.FineDigits)
                        .Taken(
                            "U_b",
                            "ground of the second",
                            state.Volts[p.To.Minus.Index]!.Value,
                            "chapter Volts of the terminals against the body",
                            ReportBuilder.FineDigits)
                        .Gives("U", "between them", GroundPairs.Between(state, p.From, p.To), "max(U_a − U_b, U_b − U_a)")
                        .Of($"{p.From.Gear.Id} and {p.To.Gear.Id}")),
            ]);
    }

    private static Calculation Seen(ChannelResult c, Written<Ohms> needed)
    {
        var w = new ReportBuilder().Given("Z_need", "load that it needs", needed);
        return c.Nominal is { } seen
            ? w.Taken("Z", "load that it sees", seen, "chapter Loads and power of the channels")
                .Gives("x", "against what it needs", new Share(seen / needed.Value), "Z/Z_need")
                .Says(
                    "verdict",
                    seen.Value > needed.Value.Value * SourceLoads.Tolerance ? "too little load: it mutes" : "load enough",
                    "rule source/needs-load")
                .Of(c.Id)
            : w.Says("verdict", "it sees no load: it mutes", "rule source/needs-load").Of(c.Id);
    }

    private static Calculation Heat(InstalledSystem install, LoadResistor r)
    {
        var w = new ReportBuilder().Given("R", "resistance", r.Resistance!.Value);
        if (SourceLoads.VoltsAt(install, r) is not { } volts || r.Resistance.Value.Value.Value <= 0)
        {
            return w.Says("heat", "unknown", "nobody states the voltage of what it lies across").Of(r.Id);
        }

        var watts = new Watts(volts.Value * volts.Value / r.Resistance.Value.Value.Value);
        w.Taken("U", "highest voltage across it", volts, "maximum of what it lies across").Gives("P", "heat", watts, "U²/R");
        return (r.Handles is { Value.Value: > 0 } handles
            ? w.Given("P_r", "its rating", handles).Gives("u", "share of its rating", new Share(watts / handles.Value), "P/P_r")
            : w.Says("rating", "unknown", "the spec gives none")).Of(r.Id);
    }
}
