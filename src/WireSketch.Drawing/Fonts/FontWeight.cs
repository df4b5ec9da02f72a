namespace WireSketch.Drawing.Fonts;

/// <summary>The weights of the bundled font, by their usual numbers.</summary>
public enum FontWeight
{
    Regular = 400,
    SemiBold = 600,
}
