using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>What flows while a load starts, and which fuse stays whole meanwhile.</summary>
internal static class StartingCurrents
{
    /// <summary>How long a motor or compressor takes to start (common practice, no published source).</summary>
    public static readonly Seconds Start = new(0.5);

    /// <summary>
    /// The highest current through a device when a load starts, all others running, and which load that is; null if none states its
    /// surge.
    /// </summary>
    public static (string? Load, Amps Amps) StartOf(InstalledSystem install, InternalConnection link)
    {
        var full = install.Answers.State(SystemState.FullOutput);
        return full.Loads.Where(l => SurgeOf(l.Path) is not null && l.Path.Supply.Any(s => s.Link?.Index == link.Index))
            .Select(l =>
                (
                    Load: (string?)l.Path.Gear.Id,
                    Amps: new Amps(Math.Abs(full.LinkAmps[link.Index].Value) - l.Amps.Value
                        + SurgeOf(l.Path)!.Value.Value.Value)))
            .OrderByDescending(s => s.Amps.Value).FirstOrDefault();
    }

    private static Written<Amps>? SurgeOf(LoadPath load) => (load.Input.Takes as ApplianceDraw)?.Surge;

    /// <summary>Whether a fuse of that construction stays whole while the load starts.</summary>
    public static bool Outlasts(FuseStyle? style, Amps amps, Amps rating) =>
        amps <= rating || FuseTable.OpeningOf(style, amps / rating).Least >= Start;

    /// <summary>Its construction: as written, else the smallest that comes in the rating and breaks the fault current.</summary>
    public static FuseStyle? StyleOf(InstalledSystem install, InternalConnection link, Amps rating)
    {
        var fault = install.Answers.Faults.Where(f => f.Device?.Index == link.Index)
            .Select(f => f.DeviceAmpsAtNear.Value)
            .DefaultIfEmpty(0)
            .Max();
        return link.Kind == ConnectionKind.Breaker ? null : link.Style ?? FuseTable.StyleFor(rating, new(fault));
    }
}
