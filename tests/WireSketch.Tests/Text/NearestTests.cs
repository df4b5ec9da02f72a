using CsCheck;
using WireSketch.Text;

namespace WireSketch.Tests.Text;

public sealed class NearestTests
{
    private static readonly string[] Known = ["rating", "style", "zone", "bare metal", "AGM", "from", "to"];

    [Theory]
    [InlineData("ratng", "rating")]
    [InlineData("raitng", "rating")]
    [InlineData("Zone", "zone")]
    [InlineData("agm", "AGM")]
    [InlineData("bare_metal", "bare metal")]
    [InlineData("form", "from")]
    [InlineData("capacity", null)]
    [InlineData("xy", null)]
    [InlineData("", null)]
    public void The_word_that_was_probably_meant_is_found_or_none(string written, string? meant) =>
        Assert.Equal(meant, Nearest.To(written, Known));

    /// <summary>Worked examples of the optimal string alignment distance; "kitten" and "sitting" is the textbook case of 3.</summary>
    [Theory]
    [InlineData("kitten", "sitting", 3)]
    [InlineData("ca", "ac", 1)]
    [InlineData("", "abc", 3)]
    [InlineData("same", "same", 0)]
    public void Distances_are_those_of_the_textbook(string a, string b, int distance) => Assert.Equal(distance, Nearest.Distance(a, b));

    [Fact]
    public void Distance_is_the_same_both_ways_and_no_more_than_the_longer_word()
    {
        var word = Gen.Char["abc"].Array[0, 8].Select(c => new string(c));
        Gen.Select(word, word).Sample((a, b) =>
        {
            Assert.Equal(Nearest.Distance(a, b), Nearest.Distance(b, a));
            Assert.InRange(Nearest.Distance(a, b), Math.Abs(a.Length - b.Length), Math.Max(a.Length, b.Length));
            Assert.Equal(a == b, Nearest.Distance(a, b) == 0);
        });
    }
}
