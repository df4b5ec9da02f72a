using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Rules;

namespace WireSketch.Papers.Reports;

/// <summary>Levels at the inputs, and what wakes the devices.</summary>
internal static class SignalChapters
{
    public static Chapter Levels(Install install) => new(
        "signals", "Levels at the inputs",
        ["What arrives is the maximum of the source, through adapters by their ratio or to their highest output. It must lie in the range that the input takes at that level."],
        [.. install.Answers.Signals.Select(s => new Calculation(
            $"{s.Gear.Id}.{s.Input}",
            [
                new("fed by", s.FedBy ?? "nothing", null, null, "wiring"), new("chain", string.Join(" > ", s.Chain.Select(g => g.Id)), null, null, "wiring"),
                new("takes", s.Accepts is { } a ? $"{a.Least} to {a.Most}" : "unknown", s.Accepts?.Most.Value, "V", "spec"),
            ],
            [Result.Said("level", s.Level ?? "none"), Result.Of("most that arrives", s.Maximum)]))]);

    public static Chapter Waking(Install install) => new(
        "waking", "What wakes the devices",
        ["A device wakes by what its setting says and what is wired or carried to it. The currents of all inputs on one control output are summed (20 mA each where nobody says; common practice)."],
        [
            .. install.Answers.Wakes.Select(w => new Calculation(
                w.Gear.Id, [new("setting", w.Mode, null, null, "spec, or the first that it can wake on")],
                [Result.Said("wakes by", w.By ?? "nothing"), Result.Said("from", w.Source ?? "nothing"), Result.Said("live with ignition off", w.LiveWithIgnitionOff ? "yes" : "no")])),
            .. install.Answers.Energy.ControlLoads.Select(c => new Calculation(
                c.Source.Id, [new("limit", Quantity.Print(c.Limit), c.Limit.Value, "A", c.LimitIsAssumed ? "default: 0.5 A (common practice)" : Limit(install, c.Source.Gear))],
                [Result.Of("current", c.Amps)])),
        ]);

    private static string Limit(Install install, Language.Gear? gear) => gear switch
    {
        HeadUnit { RemoteLimit: { } l } => Input.Place(install.Spec, l.At),
        Processor { RemoteLimit: { } l } => Input.Place(install.Spec, l.At),
        IgnitionSource { Limit: { } l } => Input.Place(install.Spec, l.At),
        TapPoint { Limit: { } l } => Input.Place(install.Spec, l.At),
        _ => "spec",
    };
}
