using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>Which loads may lose little voltage, and how much that is.</summary>
internal static class CriticalLoads
{
    /// <summary>Amplifiers, head units, processors, and what is marked critical.</summary>
    public static bool Includes(Gear gear) => gear.PowerInputs.Any(p => p.IsCritical);

    /// <summary>The limit that the spec writes for such a load; null if it writes none.</summary>
    public static Written<Share>? Written(SpecSettings settings, Gear gear) => Includes(gear) ? settings.DropCritical : settings.DropOther;

    /// <summary>What is assumed otherwise.</summary>
    public static Assumption<Share> Assumed(Gear gear) => Includes(gear) ? Assume.DropCritical : Assume.DropOther;

    /// <summary>The most that may be lost on the way to a load and back, over the voltage of its source.</summary>
    public static Share DropLimit(SpecSettings settings, Gear gear) => Written(settings, gear)?.Value ?? Assumed(gear).Value;
}
