using WireSketch.Electrical;
using WireSketch.Electrical.TurnOn;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Documents.Reports;

/// <summary>Levels at the inputs, and what wakes the devices.</summary>
internal static class SignalChapters
{
    public static Chapter Levels(InstalledSystem install) => new(
        "signals", "Levels at the inputs",
        [
            "What arrives is the highest voltage of the device that feeds the input: a source or processor as stated; an adapter its "
                + "stated output, else its ratio times what arrives at it; an amplifier before it √(P·Z) of its power table.",
            "Headroom: how far what arrives lies below the most that the input takes; reserve: how far it lies above the least with "
                + "which full output is reached.",
        ],
        [],
        [.. SameWorking.Merged(install.Answers.Signals.Select(s => Of(install, s)))]);

    public static Chapter Waking(InstalledSystem install) => new(
        "waking", "What wakes the devices",
        [
            "A device wakes by what its setting says and what is wired or carried to it. The currents of all inputs on one control "
                + "output are summed."
        ],
        [],
        [
            .. install.Answers.Wakes.Select(w =>
                new ReportBuilder().Told("setting", WakeModes.Words[w.Mode], WakeOrigin(w))
                    .Says("wakes by", w.By is { } by ? WakeModes.Words[by] : "nothing", "the wiring")
                    .Says("from", w.Source ?? "nothing", "the wiring")
                    .Says("live with the ignition off", w.LiveWithIgnitionOff ? "yes" : "no", "the wiring, with all switched sources off")
                    .Of(w.Gear.Id)),
            .. install.Answers.Energy.ControlLoads.Select(c => new ReportBuilder()
                .Each(
                    "I_c",
                    "inputs on it",
                    c.Takers.Select(t => (t.Gear.Id, t.Amps)),
                    $"remote-current or coil of each ({string.Join(", ", c.Takers.Select(t => TakerOrigin(t.Gear)).Distinct())})")
                .Given("I_max", "it can supply", TurnOnPaths.LimitOf(c.Source), c.Limit, Assume.ControlLimit.ToString())
                .Gives("I", "current", c.Amps, "sum(I_c)")
                .Gives("u", "share of that", new Share(c.Amps / c.Limit), "I/I_max")
                .Of(c.Source.Id)),
        ]);

    private static Calculation Of(InstalledSystem install, SignalResult s)
    {
        var w = new ReportBuilder().Told("fed by", s.FedBy ?? "nothing", "the wiring")
            .Told("chain", s.Chain.IsEmpty ? "none" : string.Join(" > ", s.Chain.Select(g => g.Id)), "the wiring")
            .Told("level", s.Level is { } level ? SignalLevels.Words[level] : "none", "kind of the output");
        if (s.FedBy is null || s.Maximum is not { } arrives)
        {
            return w.Says(
                "arrives",
                s.FedBy is null ? "nothing" : "unknown",
                s.FedBy is null ? "nothing is wired to it" : "nobody states what feeds it")
                .Of($"{s.Gear.Id}.{s.Input}");
        }

        Arriving(w, install, s, arrives);
        if (s.Accepts is not { } range)
        {
            return w.Says("takes", s.TakesThatLevel ? "unknown" : "no such level", "nobody states its range").Of($"{s.Gear.Id}.{s.Input}");
        }

        w.Taken("U_most", "the most that it takes", range.Most, RangeOrigin(s))
            .Gives("h", "headroom", Decibels.FromVoltageRatio(range.Most / arrives), "20·log10(U_most/U_in)");
        if (range.Least.Value > 0)
        {
            w.Taken("U_least", "the least for full output", range.Least, RangeOrigin(s))
                .Gives("r", "reserve", Decibels.FromVoltageRatio(arrives / range.Least), "20·log10(U_in/U_least)");
        }

        return w.Of($"{s.Gear.Id}.{s.Input}");
    }

    private static void Arriving(ReportBuilder w, InstalledSystem install, SignalResult s, Volts arrives)
    {
        var from = install.Wiring.TerminalsById[s.FedBy + ".+"];
        switch (from.Gear!.SignalOutputs.FirstOrDefault(o => o.Terminal == from.Shape))
        {
            case { Maximum: null, Ratio: { } ratio }:
                w.Number("q", "ratio of the adapter", ratio.Value, ReportBuilder.Place(ratio.At))
                    .Taken("U_a", "arrives at the adapter", new Volts(arrives.Value / ratio.Value), $"this chapter, {from.Gear.Id}")
                    .Gives("U_in", "arrives", arrives, "q·U_a");
                break;
            case { Amplifies: { Power.IsEmpty: false } own }:
                var best = own.Power.MaxBy(p => p.Key.Value.Value * p.Value.Value.Value);
                w.Given("Z_b", "stated load", best.Key)
                    .Given("P_b", "its power", best.Value)
                    .Gives("U_in", "arrives", arrives, "√(P_b·Z_b)");
                break;
            case var output:
                w.Taken("U_in", "arrives", arrives, output?.Maximum is { } most ? ReportBuilder.Place(most.At) : "the spec");
                break;
        }
    }

    private static string RangeOrigin(SignalResult s) =>
        s.Gear.SignalInputs.FirstOrDefault(i => i.Terminal.Name == s.Input)?.At(s.Level).At is { } at
            ? ReportBuilder.Place(at)
            : "the spec";

    private static string WakeOrigin(TurnOnResult w) =>
        w.Gear.TurnOnInputs.Select(i => i.Sleep).OfType<SleepSettings>().FirstOrDefault() is { } sleep
            && (sleep.Setting ?? (sleep.WakesOn.IsEmpty ? null : sleep.WakesOn[0])) is { } written
            ? ReportBuilder.Place(written.At) : "default: remote";

    private static string TakerOrigin(Gear gear) =>
        gear.TurnOnInputs.FirstOrDefault(i => i.Sleep is not null) is { } input ? input.Current is { } own
            ? ReportBuilder.Place(own.At)
            : $"default: {Assume.Remote.Words}, {Assume.Remote.Basis}"
        : gear.PowerInputs.Select(p => p.Takes).OfType<CoilDraw>().FirstOrDefault() is { Coil: { } coil } ? ReportBuilder.Place(coil.At)
        : $"default: {Assume.RelayCoil.Words}, {Assume.RelayCoil.Basis}";

    private static double Square(double x) => x * x;
}
