using CsCheck;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;
using Xunit;

namespace WireSketch.Drawing.Tests.Sheets;

public sealed class LineBreakerTests
{
    [Fact]
    public void No_line_is_wider_than_asked_and_no_word_is_lost() =>
        Gen.Select(Gen.Char['a', 'z'].Array[1, 9].Select(c => new string(c)).Array[0, 12], Gen.Int[60, 200]).Sample((words, width) =>
        {
            var lines = LineBreaker.Break(string.Join(' ', words), width, 7);
            Assert.All(lines, l => Assert.True(FontMetrics.Width(l, 7) <= width));
            Assert.Equal(words, lines.SelectMany(l => l.Split(' ')));
        });

    [Fact]
    public void What_does_not_fit_the_last_line_ends_in_an_ellipsis()
    {
        var lines = LineBreaker.Break("floor pan under the passenger seat beside the rail", 60, 7, most: 2);
        Assert.Equal(2, lines.Length);
        Assert.EndsWith("…", lines[1], StringComparison.Ordinal);
        Assert.All(lines, l => Assert.True(FontMetrics.Width(l, 7) <= 60));
    }

    [Fact]
    public void Words_that_belong_together_stay_on_a_line_where_they_fit()
    {
        var line = DeviceLabels.ByParts("fuse block, blade maxi");
        Assert.Equal(["fuse block,", "blade maxi"], LineBreaker.Break(line, 60, 7));
        Assert.Equal(["blade", "maxi"], LineBreaker.Break(DeviceLabels.ByParts("blade maxi"), 30, 7));
    }

    [Theory]
    [InlineData("a short draws 1158 A; it breaks", "1158\u00a0A; it")]
    [InlineData("12 in from the battery", "12\u00a0in from")]
    [InlineData("4 AWG carries 130 A.", "4\u00a0AWG carries 130\u00a0A.")]
    [InlineData("2 amplifiers in 1 install", "2 amplifiers in 1 install")]
    public void A_number_stays_with_its_unit(string words, string bound) =>
        Assert.Contains(bound, DeviceLabels.WithUnits(words), StringComparison.Ordinal);
}
