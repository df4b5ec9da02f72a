using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>A device, or the fuses of one block, behind which a short draws more than it can break.</summary>
/// <param name="Worst">The highest current that it may have to break.</param>
/// <param name="Several">More than one fuse of the block.</param>
/// <param name="Backing">A device ahead, on every way to this one, that can break the current: it opens too, and the arc goes out.</param>
internal sealed record OverBreaking(FaultResult Worst, bool Several, InternalConnection? Backing)
{
    public InternalConnection Device => Worst.Device!;

    /// <summary>What the short draws, and what the device can break.</summary>
    public FindingText Draws
    {
        get
        {
            var style = Device.Style is { } known ? FuseStyles.Words[known] + " " : "";
            return Several
                ? FindingText.Of(
                    $"a short right behind a fuse of the block {Device.Gear!.Id} draws {Worst.DeviceAmpsAtNear:measured}; {style}fuses "
                        + $"break {Worst.Breaking:limit} at most")
                : $"a short right behind {RunText.Named(Device)} draws {Worst.DeviceAmpsAtNear:measured}; "
                    + $"{(style.Length > 0 ? $"a {style}{RunText.Device(Device)}" : "it")} breaks {Worst.Breaking:limit} at most";
        }
    }

    /// <summary>
    /// One for a device, or for all fuses of one block, at the highest current they may have to break. That a device nearer to the source
    /// may stand in for one that cannot break the current: IEC 60364-4-43, 434.5.1, from memory.
    /// </summary>
    public static IEnumerable<OverBreaking> Find(InstalledSystem install)
    {
        var capable = install.Answers.Faults.Where(f => f is { Device: not null, Breaking: not null })
            .GroupBy(f => f.Device!.Index).ToDictionary(g => g.Key, g => g.First().Breaking!.Value);
        return from fault in install.Answers.Faults
               where !install.IsShorted && fault is { Device: not null, Breaking: { } breaking } && fault.DeviceAmpsAtNear > breaking
               group fault by fault.Device!.Index into ofDevice
               let worst = ofDevice.MaxBy(f => f.DeviceAmpsAtNear.Value)!
               let backing = BackedBy(install, worst, capable)
               group (worst, backing) by (RunText.Subject(worst.Device!), backing?.Index) into ofHolder
               select new OverBreaking(
                   ofHolder.Select(x => x.worst).MaxBy(f => f.DeviceAmpsAtNear.Value)!,
                   ofHolder.Count() > 1,
                   ofHolder.First().backing);
    }

    private static InternalConnection? BackedBy(InstalledSystem install, FaultResult fault, Dictionary<int, Amps> capable)
    {
        InternalConnection? found = null;
        foreach (var way in install.Wiring.Feeds.Where(f => install.Wiring.SourceAt(f.Source)?.Source is BatterySource)
            .Select(f => f.FirstBehind(fault.Device!))
            .OfType<ProtectedConductor>())
        {
            var backing = way.Protections.TakeWhile(p => p.Index != fault.Device!.Index)
                .LastOrDefault(p => capable.TryGetValue(p.Index, out var most) && most >= fault.DeviceAmpsAtNear);
            if (backing is null)
            {
                return null;
            }

            found ??= backing;
        }

        return found;
    }
}
