using System.Collections.Immutable;
using WireSketch.Electrical.Energy;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Topology;

namespace WireSketch.Papers.Reports;

/// <summary>What every device takes at full output, before the wiring is looked at.</summary>
internal static class DemandChapter
{
    public static Chapter Of(Install install) => new(
        "demand", "What the devices take",
        [
            "Amplifier: P_in = P_out/efficiency, P_out the sum of what its channels give (see speakers); in music one eighth of it (common practice), never less than at idle. A stated current counts at 12 V.",
            "Head unit and processor: constant power, current at 12 V. Lamp: resistance, U²/P at rated volts. Motor and pump: constant current. Everything else: constant power, unless the spec says how it behaves.",
        ],
        [.. install.Wiring.Loads.Select(l => new Calculation(l.Gear.Id, Inputs(install, l.Gear), Results(install, l)))]);

    private static ImmutableArray<Result> Results(Install install, LoadPath path)
    {
        var draw = LoadDraw.Of(path.Gear, Electrical.SystemState.FullOutput, Output(install, path.Gear));
        return draw.Kind switch
        {
            DrawKind.Power => [Result.Of("P_in", new Watts(draw.Size))],
            DrawKind.Current => [Result.Of("I", new Amps(draw.Size))],
            _ => [Result.Of("R", new Ohms(draw.Size))],
        };
    }

    private static ImmutableArray<Input> Inputs(Install install, Gear gear)
    {
        var spec = install.Spec;
        switch (gear)
        {
            case Amplifier { Supply.Current: { } stated }:
                return [Input.Of(spec, "current at full output", stated)];
            case Amplifier a:
                return
                [
                    Input.Computed("P_out", Output(install, a), "speakers"),
                    Input.Of(spec, "efficiency", a.Supply.Efficiency, LoadDraw.EfficiencyOf(a), "80 % for class D, else 65 % (common practice)"),
                    Input.Of(spec, "idle", a.Idle, new Amps(1), "1 A (common practice)"),
                ];
            case HeadUnit h:
                return [Input.Of(spec, "current", h.Current, new Amps(5), "5 A (common practice)")];
            case Processor p:
                return [Input.Of(spec, "current", p.Supply.Current, new Amps(1), "1 A (common practice)")];
            case LevelAdapter l:
                return [Input.Of(spec, "current", l.Current, new Amps(0.1), "0.1 A (common practice)")];
            case Load l:
                var inputs = ImmutableArray.CreateBuilder<Input>();
                inputs.AddRange(l.Power is { } watts ? new[] { Input.Of(spec, "power", watts) } : []);
                inputs.AddRange(l.Current is { } amps ? new[] { Input.Of(spec, "current", amps) } : []);
                inputs.AddRange(l.Resistance is { } ohms ? new[] { Input.Of(spec, "resistance", ohms) } : []);
                inputs.Add(Input.Of(spec, "rated volts", l.Rated, new Volts(12), "12 V"));
                return inputs.ToImmutable();
            default:
                return [];
        }
    }

    private static Watts Output(Install install, Gear gear) => new(install.Answers.Channels.Where(c => ReferenceEquals(c.Gear, gear)).Sum(c => c.Power?.Value ?? 0));
}
