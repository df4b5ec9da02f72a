using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Rules;

namespace WireSketch.Papers.Reports;

/// <summary>Loads of the channels, and where their power goes.</summary>
internal static class SpeakerChapter
{
    public static Chapter Of(Install install) => new(
        "speakers", "Loads and power of the channels",
        [
            "Load: nodal analysis of coils, crossovers and wires as they are joined; coils as resistances of their nominal value. Each half of a bridge sees half the load.",
            "Power: U² in proportion between the loads that the power table states, U as at the highest stated load above it, I as at the lowest below it; P = U²/Z.",
            "Target for setting the gain: U = √(P·Z) for the smaller of what the channel gives and what the speakers take.",
        ],
        [.. install.Answers.Channels.Select(c => new Calculation(
            c.BridgedWith is { } other ? $"{c.Id} bridged with {other}" : c.Id,
            [.. PowerTable(install, c), .. c.Coils.Select(k => new Input($"{k.Speaker.Id}.coil.{k.Coil.ToString(System.Globalization.CultureInfo.InvariantCulture)}", k.Speaker.Coils?.Words ?? "4 ohm", k.Speaker.CoilImpedance.Value, "ohm", k.Speaker.Coils is { } w ? Input.Place(install.Spec, w.At) : "default: one coil of 4 ohm"))],
            [
                Result.Of("load, coils alone", c.Nominal), Result.Of("load with wires", c.Loaded), Result.Of("each half", c.PerHalf), Result.Of("least allowed", c.Minimum), Result.Of("P", c.Power),
                Result.Of("U", c.Volts), Result.Of("target", c.TargetVolts), Result.Of("lost in wires", c.WireLoss),
                .. c.Fault == LoadFault.None ? Array.Empty<Result>() : [Result.Said("fault", Fault(c.Fault))],
                .. c.Coils.Where(k => k.Power is not null).Select(k => Result.Of($"P in {k.Speaker.Id}.coil.{k.Coil.ToString(System.Globalization.CultureInfo.InvariantCulture)}", k.Power)),
            ]))]);

    private static IEnumerable<Input> PowerTable(Install install, ChannelAnswer c)
    {
        var channel = (c.Gear as Amplifier)?.Channels.FirstOrDefault(x => x.Name.Value == c.Channel);
        var table = channel is null ? [] : c.BridgedWith is not null && !channel.Bridged.IsEmpty ? channel.Bridged : channel.Power;
        return table.Select(p => new Input($"P at {p.Key.Words}", p.Value.Words, p.Value.Value.Value, "W", Input.Place(install.Spec, p.Value.At)));
    }

    private static string Fault(LoadFault fault) => fault switch
    {
        LoadFault.Shorted => "shorted",
        LoadFault.TiedToOutput => "tied to another output",
        LoadFault.Grounded => "a side is on the body",
        _ => "open",
    };
}
