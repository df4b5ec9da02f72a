using WireSketch.Electrical.OperatingPoints;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Installation;

/// <summary>How much of a source's volts a device may lose on the way.</summary>
internal static class DropLimits
{
    /// <summary>The limit for a device: the file's own, else the usual.</summary>
    public static Share LimitOf(InstalledSystem install, Gear gear) =>
        CriticalLoads.DropLimit(install.Spec.Settings, gear);
}
