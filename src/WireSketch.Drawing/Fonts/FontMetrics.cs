using System.Text;

namespace WireSketch.Drawing.Fonts;

/// <summary>
/// How wide text is in the bundled font, Inter, from the font's own tables. Letters stand at their plain advances: no kerning and no
/// ligatures, in any output, so that layout, SVG, PNG and PDF agree to the hundredth of a point.
/// </summary>
internal static class FontMetrics
{
    private static readonly FontFace Regular = Load("Inter-Regular.ttf");
    private static readonly FontFace SemiBold = Load("Inter-SemiBold.ttf");

    /// <summary>The name under which the drawings embed their subset of the font.</summary>
    public static string Family => "WireSketch Sans";

    /// <summary>Width of one line.</summary>
    /// <param name="text">The line; characters that the font lacks count as its empty box.</param>
    /// <param name="size">Size of the em.</param>
    /// <param name="weight">Weight of the letters.</param>
    /// <param name="spacing">What is added after every letter.</param>
    public static Points Width(string text, Points size, FontWeight weight = FontWeight.Regular, Points spacing = default)
    {
        var face = Face(weight);
        long units = 0;
        var letters = 0;
        foreach (var rune in text.EnumerateRunes())
        {
            units += face.Advance(face.Glyph(rune.Value));
            letters++;
        }

        return new((int)(((units * size.Hundredths) + (face.UnitsPerEm / 2)) / face.UnitsPerEm) + (spacing.Hundredths * letters));
    }

    /// <summary>Height of a line above its baseline.</summary>
    public static Points Ascent(Points size) => new(size.Hundredths * Regular.Ascent / Regular.UnitsPerEm);

    /// <summary>Depth of a line below its baseline.</summary>
    public static Points Descent(Points size) => new(size.Hundredths * Regular.Descent / Regular.UnitsPerEm);

    /// <summary>Whether the font can set every character of a text.</summary>
    public static bool Covers(string text) => text.EnumerateRunes().All(r => Regular.Glyph(r.Value) != 0);

    /// <summary>The text with every character that the font lacks, or that does not belong in a line, replaced by a box.</summary>
    public static string Settable(string text)
    {
        var line = new StringBuilder(text.Length);
        foreach (var rune in text.EnumerateRunes())
        {
            line.Append(Rune.IsControl(rune) || rune.Value is 0x2028 or 0x2029 ? " "
                : Regular.Glyph(rune.Value) == 0 ? "□"
                : rune.ToString());
        }

        return line.ToString();
    }

    internal static FontFace Face(FontWeight weight) => weight == FontWeight.SemiBold ? SemiBold : Regular;

    private static FontFace Load(string name)
    {
        var assembly = typeof(FontMetrics).Assembly;
        using var stream = assembly.GetManifestResourceStream("WireSketch.Drawing.Fonts.Data." + name)
            ?? throw new InvalidOperationException($"{name} is not embedded");
        using var copy = new MemoryStream();
        stream.CopyTo(copy);
        return new(copy.ToArray());
    }
}
