using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Installation;

/// <summary>How much of a source's volts a device may lose on the way.</summary>
internal static class DropLimits
{
    private static readonly Share Critical = Share.FromPercent(3);

    private static readonly Share Other = Share.FromPercent(10);

    /// <summary>The limit for a device: the file's own, else the usual.</summary>
    public static Share LimitOf(InstalledSystem install, Gear gear) =>
        gear.PowerInputs.Any(p => p.IsCritical)
            ? install.Spec.Settings.DropCritical?.Value ?? Critical
            : install.Spec.Settings.DropOther?.Value ?? Other;
}
