using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Output;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

public sealed class FontSubsetTests
{
    private const string Words = "P1 · 4 AWG Ω²−";

    [Theory]
    [InlineData(FontWeight.Regular)]
    [InlineData(FontWeight.SemiBold)]
    public void A_subset_has_the_letters_asked_for_at_the_same_widths_and_no_others(FontWeight weight)
    {
        var whole = FontMetrics.Face(weight);
        var part = new FontFace(FontSubset.Of(whole, Words.Select(c => (int)c)));
        foreach (var c in Words)
        {
            Assert.NotEqual(0, part.Glyph(c));
            Assert.Equal(whole.Advance(whole.Glyph(c)), part.Advance(part.Glyph(c)));
        }

        Assert.Equal(0, part.Glyph('z'));
        Assert.InRange(part.Data.Length, 1000, 12_000);
    }

    [Fact]
    public void A_subset_has_no_tables_that_kern_or_join_letters() =>
        Assert.DoesNotContain(
            new FontFace(FontSubset.Of(FontMetrics.Face(FontWeight.Regular), Words.Select(c => (int)c))).Tables,
            t => t is "GPOS" or "GSUB" or "kern");

    [Fact]
    public void The_same_letters_give_the_same_bytes() =>
        Assert.Equal(
            FontSubset.Of(FontMetrics.Face(FontWeight.Regular), [65, 66]),
            FontSubset.Of(FontMetrics.Face(FontWeight.Regular), [66, 65]));
}
