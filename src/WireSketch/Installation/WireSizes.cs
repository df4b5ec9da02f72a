using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Sizes in which cable is sold, as far as rules suggest one and <c>auto</c> chooses one, thinnest first.</summary>
internal static class WireSizes
{
    /// <summary>Sizes of 33 CFR 183.425 Table 5 that shops stock (common practice, no published source).</summary>
    public static ImmutableArray<WireSize> American { get; } = [
        .. new[] { 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -3 }.Select(WireSize.FromAwg)
    ];

    /// <summary>Sizes of IEC 60228.</summary>
    public static ImmutableArray<WireSize> Metric { get; } =
        [.. new[] { 0.75, 1, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 }.Select(a => WireSize.FromArea(new(a)))];

    /// <summary>The smallest size, in the system of another, that has at least an area; null if none has.</summary>
    public static WireSize? AtLeast(double squareMillimeters, WireSize like)
    {
        foreach (var size in like.Awg is null ? Metric : American)
        {
            if (size.Area.Value >= squareMillimeters * 0.999)
            {
                return size;
            }
        }

        return null;
    }

    /// <summary>The next size up, in the same system; null if there is none.</summary>
    public static WireSize? Next(WireSize size) => AtLeast(size.Area.Value * 1.01, size);

    /// <summary>The smallest size that carries a current where another one lies; null if none does.</summary>
    public static WireSize? Carrying(Amps amps, ConductorResult like)
    {
        var wire = like.Conductor.Wire;
        foreach (var size in wire.Size.Awg is null ? Metric : American)
        {
            if (AmpacityTable.Of(size, wire.Insulation) is { } table && table * like.Correction.Value >= amps)
            {
                return size;
            }
        }

        return null;
    }

    /// <summary>What a clad conductor would carry if it were copper; null if that is unknown.</summary>
    public static Amps? AsCopper(ConductorResult clad) =>
        clad.Ampacity is { } ampacity ? ampacity / Math.Sqrt(Metal.CopperCladAluminum.ShareOfCopper.Value) : null;

    /// <summary>
    /// Copper of a conductor, in mm². Clad wire counts for the share of its area that its conductivity is of copper's.
    /// </summary>
    public static double CopperArea(Conductor conductor) =>
        conductor.Wire.Size.Area.Value
            * (conductor.Wire.Material == Language.ConductorMaterial.Clad ? Metal.CopperCladAluminum.ShareOfCopper.Value : 1);
}
