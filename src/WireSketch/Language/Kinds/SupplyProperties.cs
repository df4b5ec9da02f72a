using WireSketch.Quantities;

namespace WireSketch.Language.Kinds;

/// <summary>What a device takes from the supply.</summary>
public sealed record SupplyProperties
{
    public static SupplyProperties None { get; } = new();

    /// <summary>The device's own fuses, in all.</summary>
    public Written<Amps>? Fuse { get; init; }

    public Written<Share>? Efficiency { get; init; }

    /// <summary>Draw at full output, if the maker states it.</summary>
    public Written<Amps>? Current { get; init; }

    /// <summary>Thickest and thinnest cable its terminals take.</summary>
    public Written<Range<WireSize>>? Fits { get; init; }

    internal static SupplyProperties Read(Fields f) => new()
    {
        Fuse = f.Amount<Amps>("fuse", "its own fuses, in all"),
        Efficiency = f.Amount<Share>("efficiency", "output over input at full output", "65 %, or 80 % for class D (common practice)"),
        Current = f.Amount<Amps>("current", "draw at full output, if stated"),
        Fits = f.SizeRange("fits", "the cable its supply terminals take"),
    };
}
