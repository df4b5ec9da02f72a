using WireSketch.Drawing.Fonts;

namespace WireSketch.Drawing.Sheets;

/// <summary>
/// The type scale of the drawing area in sheet units, before the sheet is scaled to its paper. Everything to be read is at least 7.25
/// units, so that 6 pt on paper are kept down to a scale of 6/7.25; what one must act on is larger by a sixth.
/// </summary>
internal static class TextSizes
{
    /// <summary>The smallest scale at which a sheet may be printed: text of the body is 6 pt then.</summary>
    public const double LeastScale = 6.0 / 7.25;

    /// <summary>The largest: text of a small system need not grow beyond this.</summary>
    public const double MostScale = 1.3;

    public static Points Name => 8.6;

    public static Points Body => 7.25;

    /// <summary>Ratings of fuses: 7 pt at the smallest scale.</summary>
    public static Points Rating => 8.5;

    /// <summary>From one baseline to the next.</summary>
    public static Points Leading => 9;

    public static Points NameLeading => 10.5;

    /// <summary>Width of a line of body text.</summary>
    public static Points Width(TextLine line) => line.Parts.Aggregate(Points.Zero, (sum, p) => sum + Width(p));

    public static Points Width(SheetText words) =>
        FontMetrics.Width(words.Text, Body, words.Emphasis == TextEmphasis.Strong ? FontWeight.SemiBold : FontWeight.Regular);

    /// <summary>Whole units that hold a length.</summary>
    public static int Up(Points length) => (length.Hundredths + 99) / 100;
}
