using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.Faults;

/// <summary>The construction of what protects: the same for faults, rules, sizing and lists.</summary>
internal static class FuseConstruction
{
    public const string Breaker = "breaker";

    /// <summary>
    /// As written, else the smallest that comes in the rating and breaks a current; null where nothing is made in that rating, or it is unknown.
    /// </summary>
    /// <param name="link">The fuse or breaker.</param>
    /// <param name="toBreak">The current that it must break.</param>
    public static string? Of(InternalConnection link, Amps toBreak) => link.Kind == ConnectionKind.Breaker
        ? Breaker
        : link.Style ?? (link.Rating is { } rating ? FuseTable.StyleFor(rating, toBreak) : null);

    /// <summary>The same, with the highest fault current that was computed at it.</summary>
    public static string? Of(InternalConnection link, IEnumerable<FaultResult> faults) => Of(link, Highest(link, faults));

    /// <summary>The highest fault current that was computed at a device; nothing where none was.</summary>
    public static Amps Highest(InternalConnection link, IEnumerable<FaultResult> faults) =>
        new(faults.Where(f => f.Device?.Index == link.Index).Select(f => f.DeviceAmpsAtNear.Value).DefaultIfEmpty(0).Max());
}
