using CsCheck;
using WireSketch.Text;

namespace WireSketch.Tests.Text;

public sealed class SourceFileTests
{
    [Theory]
    [InlineData("", 1)]
    [InlineData("a", 1)]
    [InlineData("a\n", 2)]
    [InlineData("a\r\nb\nc\rd", 4)]
    public void Lines_end_as_files_of_any_system_have_it(string text, int lines) =>
        Assert.Equal(lines, new SourceFile("a", text).LineCount);

    [Fact]
    public void The_lines_with_their_ends_make_up_the_text() => Gen.Char["ab\r\n"].Array[0, 40].Select(c => new string(c)).Sample(text =>
    {
        var file = new SourceFile("a", text);
        for (var line = 1; line <= file.LineCount; line++)
        {
            var end = line < file.LineCount ? file.LineStart(line + 1) : text.Length;
            var whole = text[file.LineStart(line)..end];
            Assert.StartsWith(file.Line(line), whole, StringComparison.Ordinal);
            Assert.Contains(whole[file.Line(line).Length..], new[] { "", "\n", "\r", "\r\n" });
        }
    });

    [Fact]
    public void Every_index_has_its_line_and_column() => Gen.Char["ab\r\n"].Array[1, 40].Select(c => new string(c)).Sample(text =>
    {
        var file = new SourceFile("a", text);
        for (var i = 0; i <= text.Length; i++)
        {
            Assert.Equal(i, file.LineStart(file.LineAt(i)) + file.ColumnAt(i) - 1);
            Assert.True(file.LineAt(i) == file.LineCount || i < file.LineStart(file.LineAt(i) + 1));
        }
    });
}
