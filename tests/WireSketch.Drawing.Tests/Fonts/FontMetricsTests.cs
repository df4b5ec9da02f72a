using HarfBuzzSharp;
using SkiaSharp;
using WireSketch.Drawing.Fonts;
using Xunit;

namespace WireSketch.Drawing.Tests.Fonts;

/// <summary>Widths against two independent readers of the same font files: HarfBuzz and FreeType (through Skia).</summary>
public sealed class FontMetricsTests
{
    public static TheoryData<string> Lines => [
        "AV To WAVE", "P1 · 4 AWG · RD · 17 ft", "2 × 4 Ω parallel, 21 mm²", "fi ffl -> 1/2 (c)", "Ünïcödé ≥ 6 pt − µ", ""
    ];

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_is_as_wide_as_HarfBuzz_makes_it_without_kerning(string line)
    {
        foreach (var weight in Enum.GetValues<FontWeight>())
        {
            using var blob = Blob.FromStream(new MemoryStream(FontMetrics.Face(weight).Data.ToArray()));
            using var face = new Face(blob, 0);
            using var font = new Font(face);
            using var buffer = new HarfBuzzSharp.Buffer();
            buffer.AddUtf16(line);
            buffer.GuessSegmentProperties();
            font.Shape(buffer, [.. "kern,liga,calt,clig,ccmp".Split(',').Select(f => Feature.Parse(f + "=0"))]);
            var wide = buffer.GlyphPositions.Sum(p => (long)p.XAdvance) * 1000.0 / face.UnitsPerEm;
            Assert.Equal(wide, FontMetrics.Width(line, 1000, weight).Value, 0.01);
        }
    }

    [Theory]
    [MemberData(nameof(Lines))]
    public void A_line_is_as_wide_as_Skia_measures_it_unhinted(string line)
    {
        foreach (var weight in Enum.GetValues<FontWeight>())
        {
            using var data = SKData.CreateCopy(FontMetrics.Face(weight).Data);
            using var typeface = SKTypeface.FromData(data);
            using var font = new SKFont(typeface, 1000) { Hinting = SKFontHinting.None, LinearMetrics = true, Subpixel = true };
            Assert.Equal(font.MeasureText(line), FontMetrics.Width(line, 1000, weight).Value, 0.05);
        }
    }

    [Fact]
    public void Spacing_is_added_after_every_letter() =>
        Assert.Equal(FontMetrics.Width("DASH", 9) + (4 * 120.0 / 100), FontMetrics.Width("DASH", 9, spacing: 1.2));

    [Fact]
    public void What_the_font_lacks_becomes_a_box_and_line_breaks_become_spaces() =>
        Assert.Equal("a □ b", FontMetrics.Settable("a 🚗\nb"));

    [Theory]
    [InlineData(1234, "12.34")]
    [InlineData(-50, "-0.5")]
    [InlineData(700, "7")]
    [InlineData(10, "0.1")]
    [InlineData(5, "0.05")]
    public void Points_print_without_exponent_or_needless_zeros(int hundredths, string expected) =>
        Assert.Equal(expected, new Points(hundredths).ToString());
}
