using WireSketch.Quantities;

namespace WireSketch.Installation;

/// <summary>The lowest load that an output may drive.</summary>
internal static class MinimumLoads
{
    /// <summary>Below by more than the rounding of a computation.</summary>
    public static bool IsBelow(Ohms load, Ohms minimum) => load.Value < minimum.Value * (1 - 1e-6);
}
