using WireSketch.Documents.Formats;

namespace WireSketch.Tests.Documents.Formats;

public sealed class MarkdownTests
{
    [Theory]
    [InlineData("a | b", "a \\| b")]
    [InlineData("<script>", "\\<script\\>")]
    [InlineData("[x](y) `z` *w* _v_ # & ~", "\\[x\\](y) \\`z\\` \\*w\\* \\_v\\_ \\# \\& \\~")]
    [InlineData("two\nlines", "two lines")]
    [InlineData("- no list", "\\- no list")]
    [InlineData("back\\slash", "back\\\\slash")]
    public void Words_of_a_spec_stay_words(string words, string escaped) => Assert.Equal(escaped, Markdown.Escape(words));

    [Fact]
    public void A_table_has_a_row_for_each_and_numbers_stand_at_the_right() =>
        Assert.Equal(
            "# T\n\n| A | B |\n| --- | ---: |\n| x\\|y | 1 |\n",
            new Markdown().Heading(1, "T").Table(new([new("A"), new("B", true)], [["x|y", "1"]])).ToString());
}
