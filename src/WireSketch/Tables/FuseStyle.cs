using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>The construction of a fuse, smallest first.</summary>
public enum FuseStyle
{
    BladeMini,
    Blade,
    BladeMaxi,
    Strip,
    Wafer,
    Cartridge,
    ClassT,
}

/// <summary>The words of <see cref="FuseStyle"/>.</summary>
public static class FuseStyles
{
    public static ChoiceWords<FuseStyle> Words { get; } = new(
        (FuseStyle.BladeMini, "blade mini"), (FuseStyle.Blade, "blade"), (FuseStyle.BladeMaxi, "blade maxi"), (FuseStyle.Strip, "strip"),
        (FuseStyle.Wafer, "wafer"),
        (FuseStyle.Cartridge, "cartridge"), (FuseStyle.ClassT, "class T"));
}
