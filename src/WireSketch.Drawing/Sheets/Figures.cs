using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>The computed numbers that people want next to the thing they concern, in one state.</summary>
internal sealed class Figures(ElectricalResults? answers, SystemState state, LoadColoring heat = LoadColoring.None)
{
    private readonly StateResult? at = answers?.State(state);

    public bool Known => at is not null;

    public LoadColoring Heat => heat;

    /// <summary>Volts of the highest source: what a drop is a share of.</summary>
    private double Source => at?.Sources.Select(s => s.Volts.Value).DefaultIfEmpty(0).Max() ?? 0;

    /// <summary>What the heat scale shows of a run; null where it says nothing.</summary>
    public Share? HeatOf(WiredRun run)
    {
        if (heat == LoadColoring.None || at is null || run.Kind is not (RunKind.Supply or RunKind.Ground))
        {
            return null;
        }

        if (heat == LoadColoring.Drop)
        {
            return Source > 0 && Drop(run) is { } drop ? new Share(drop.Value / Source) : null;
        }

        return Loads(run).Select(l => l.Share).DefaultIfEmpty(null).Max();
    }

    private IEnumerable<(Share? Share, Amps Ampacity)> Loads(WiredRun run) => run.Conductors.Where(c => !c.IsJumper)
        .Select(c =>
            answers!.Conductors[c.Index].Ampacity is { Value: > 0 } most
                ? (new Share(Math.Abs(at!.Amps[c.Index].Value) / most.Value), most)
                : ((Share?)null, default(Amps)));

    /// <summary>Amps and drop of a supply or ground run; empty for others, and where nothing was computed.</summary>
    public string Run(WiredRun run, bool brief)
    {
        if (HeatOf(run) is { } share)
        {
            var of = heat == LoadColoring.Load ? $" of {Print(Loads(run).MaxBy(l => l.Share).Ampacity)}" : "";
            return Quantity.Print(share, 2) + of;
        }

        if (at is null || run.Conductors.IsEmpty || run.Kind is not (RunKind.Supply or RunKind.Ground))
        {
            return run.Kind == RunKind.Speaker ? Loss(run) : "";
        }

        var core = run.Conductors.Where(c => !c.IsJumper).ToArray();
        var amps = new Amps(core.Select(c => Math.Abs(at.Amps[c.Index].Value)).DefaultIfEmpty(0).Max());
        if (amps.Value == 0)
        {
            return "";
        }

        var text = Print(amps);
        if (Drop(run) is not { } drop)
        {
            return text;
        }

        // A share below a half of a percent says nothing.
        if (brief || run.Kind == RunKind.Ground || Source <= 0 || drop.Value / Source < 0.005)
        {
            return $"{text} · {(brief ? "" : "drop ")}{Print(drop)}";
        }

        return $"{text} · drop {Print(drop)} ({Quantity.Digits(drop.Value / Source * 100, 2)} %)";
    }

    /// <summary>What a device gets or gives, a fact a line.</summary>
    public IEnumerable<string> Gear(Gear gear)
    {
        if (answers is null || at is null)
        {
            yield break;
        }

        foreach (var source in at.Sources.Where(s => s.Id == gear.Id))
        {
            var amps = new Amps(Math.Abs(source.Amps.Value));
            yield return $"{Print(source.Volts, 3)}, {(source.Amps.Value < 0 ? "takes" : "gives")} {Print(amps)}";
        }

        foreach (var load in at.Loads.Where(l => ReferenceEquals(l.Path.Gear, gear) && l.Amps.Value != 0))
        {
            yield return $"{Print(load.Between, 3)}, {Print(load.Amps)}";
        }

        if (gear.SpeakerParts.Any(p => p is VoiceCoil))
        {
            foreach (var line in Speaker(gear))
            {
                yield return line;
            }
        }
    }

    private IEnumerable<string> Speaker(Gear gear)
    {
        foreach (var channel in answers!.Channels.Where(c => c.Coils.Any(k => ReferenceEquals(k.Speaker, gear))))
        {
            var coils = channel.Coils.Where(k => ReferenceEquals(k.Speaker, gear)).ToArray();
            var load = channel.Nominal is { } ohms ? Print(ohms) : "";
            var power = coils[0].Power is { } watts ? Print(watts) : "";
            if (coils.Length == 1 && channel.Coils.Length == 1)
            {
                yield return GearDrawing.Join(load, power);
            }
            else
            {
                yield return GearDrawing.Join(
                    channel.Coils.All(k => ReferenceEquals(k.Speaker, gear)) ? load + " in all" : "channel " + load,
                    power + (coils.Length == 1 ? "" : " a coil"));
            }
        }
    }

    /// <summary>
    /// What is lost from end to end, to the farthest where a single core has several ends; of a cable, in its first core.
    /// </summary>
    private Volts? Drop(WiredRun run)
    {
        var single = run.From.Concat(run.To).All(e => e.Nodes.Length == 1) && (run.From.Length == 1 || run.To.Length == 1);
        double? most = null;
        foreach (var start in single ? run.From : run.From[..1])
        {
            foreach (var end in single ? run.To : run.To[..1])
            {
                if (at!.Volts[start.Nodes[0].Index] is { } a && at.Volts[end.Nodes[0].Index] is { } b)
                {
                    most = Math.Max(most ?? 0, Math.Abs(a.Value - b.Value));
                }
            }
        }

        return most is { } volts ? new Volts(volts) : null;
    }

    private string Loss(WiredRun run)
    {
        var ends = run.From.Concat(run.To).ToArray();
        var channel = answers?.Channels.FirstOrDefault(c => ends.Any(e => ReferenceEquals(e.Gear, c.Gear) && e.Shape.Name == c.Channel));
        return channel is null || channel.WireLoss.Value == 0 ? "" : $"{Quantity.Digits(channel.WireLoss.Value, 1)} dB lost";
    }

    private static string Print<T>(T value, int digits = 2)
        where T : struct, IQuantity<T> => Quantity.Print(value, digits).Replace("ohm", "Ω", StringComparison.Ordinal);
}
