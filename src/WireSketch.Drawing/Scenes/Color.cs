using System.Globalization;
using WireSketch.Quantities;

namespace WireSketch.Drawing.Scenes;

/// <summary>An opaque color of the sRGB space.</summary>
public readonly record struct Color(byte Red, byte Green, byte Blue)
{
    /// <summary>Reads <c>#1b2733</c>.</summary>
    public static Color Hex(string words) => new(
        byte.Parse(words.AsSpan(1, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture),
        byte.Parse(words.AsSpan(3, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture),
        byte.Parse(words.AsSpan(5, 2), NumberStyles.HexNumber, CultureInfo.InvariantCulture));

    /// <summary>Contrast ratio with another color, from 1 to 21, as WCAG 2.2 defines it.</summary>
    public double Contrast(Color other)
    {
        var (a, b) = (Luminance(), other.Luminance());
        return (Math.Max(a, b) + 0.05) / (Math.Min(a, b) + 0.05);
    }

    public override string ToString() => string.Create(CultureInfo.InvariantCulture, $"#{Red:x2}{Green:x2}{Blue:x2}");

    /// <summary>Relative luminance as WCAG 2.2 defines it.</summary>
    private double Luminance() => (0.2126 * Linear(Red)) + (0.7152 * Linear(Green)) + (0.0722 * Linear(Blue));

    private static double Linear(byte channel)
    {
        var share = channel / 255.0;
        return share <= 0.04045 ? share / 12.92 : Exact.Pow((share + 0.055) / 1.055, 2.4);
    }
}
