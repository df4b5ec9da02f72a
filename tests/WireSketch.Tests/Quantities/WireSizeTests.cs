using CsCheck;
using WireSketch.Quantities;

namespace WireSketch.Tests.Quantities;

public sealed class WireSizeTests
{
    /// <summary>
    /// Cross-sections in circular mils (1 cmil = π/4 × 0.0254² mm²) as the wire table of "Lessons in Electric Circuits",
    /// volume V, chapter 3 prints them; half a unit of the fourth figure is allowed.
    /// </summary>
    [Theory]
    [InlineData("4/0 AWG", 211600, 50)]
    [InlineData("1/0 AWG", 105500, 50)]
    [InlineData("4 AWG", 41740, 5)]
    [InlineData("10 AWG", 10380, 5)]
    [InlineData("12 AWG", 6530, 0.5)]
    [InlineData("18 AWG", 1624, 0.5)]
    public void American_sizes_agree_with_the_handbook(string words, double circularMils, double tolerance) =>
        Assert.Equal(circularMils, Read(words).Area.Value / (Math.PI / 4 * 0.0254 * 0.0254), tolerance);

    [Theory]
    [InlineData("4 AWG", "4 AWG")]
    [InlineData("4awg", "4 AWG")]
    [InlineData("1/0 AWG", "1/0 AWG")]
    [InlineData("0 AWG", "1/0 AWG")]
    [InlineData("21 mm2", "21 mm2")]
    [InlineData("21mm²", "21 mm2")]
    [InlineData("2.5 mm2", "2.5 mm2")]
    public void Sizes_read_as_people_write_them(string words, string printed) => Assert.Equal(printed, Read(words).ToString());

    [Theory]
    [InlineData("5/0 AWG")]
    [InlineData("41 AWG")]
    [InlineData("-2 AWG")]
    [InlineData("four AWG")]
    [InlineData("0 mm2")]
    [InlineData("-4 mm2")]
    [InlineData("5000 mm2")]
    [InlineData("4")]
    [InlineData("4 gauge")]
    public void What_is_no_size_is_refused(string words)
    {
        Assert.False(WireSize.TryRead(words, out _, out var trouble));
        Assert.Contains(words, trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_American_size_is_printed_and_read_back() =>
        Assert.All(Enumerable.Range(-3, 44), n => Assert.Equal(WireSize.FromAwg(n), Read(WireSize.FromAwg(n).ToString())));

    [Fact]
    public void Thicker_is_greater_in_either_system() => Gen.Select(Gen.Int[-3, 40], Gen.Int[-3, 40]).Sample((a, b) =>
        Assert.Equal(b.CompareTo(a), WireSize.FromAwg(a).CompareTo(WireSize.FromAwg(b))));

    private static WireSize Read(string words)
    {
        Assert.True(WireSize.TryRead(words, out var size, out var trouble), trouble);
        return size;
    }
}
