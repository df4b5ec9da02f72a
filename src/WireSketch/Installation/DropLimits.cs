using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Installation;

/// <summary>How much of a source's volts a device may lose on the way.</summary>
internal static class DropLimits
{
    private static readonly Share Critical = Share.FromPercent(3);

    private static readonly Share Other = Share.FromPercent(10);

    /// <summary>The limit for a device: the file's own, else the usual.</summary>
    public static Share LimitOf(InstalledSystem install, Gear gear) =>
        gear is Amplifier or HeadUnit or Processor or Load { Critical: true }
            ? install.Spec.Settings.DropCritical?.Value ?? Critical
            : install.Spec.Settings.DropOther?.Value ?? Other;
}
