using WireSketch.Drawing.Fonts;

namespace WireSketch.Drawing.Sheets;

/// <summary>Thickness of wires by their step, in units.</summary>
internal static class StrokeWidths
{
    /// <summary>What the casing adds to the body.</summary>
    public static Points Casing => 1.2;

    public static Points Body(int step) => step switch
    {
        4 => 4.4,
        3 => 3.2,
        2 => 2.2,
        _ => 1.4,
    };

    /// <summary>Of a wire that is in the vehicle already: a thin body in a hollow casing of the full thickness.</summary>
    public static Points Thin(int step) => Body(step) * 0.45;

    /// <summary>Thickness with casing, in whole units.</summary>
    public static int Cased(int step) => TextSizes.Up(Body(step) + Casing);
}
