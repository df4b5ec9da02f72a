using WireSketch.Cli.Findings;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Cli.Tests.Findings;

public sealed class FindingPrinterTests
{
    private static readonly SourceFile File = new("a.wsk.yaml", "one\n\tP1: 漢字 { from: a }\nthree\n");

    [Fact]
    public void A_finding_is_shown_with_place_line_marks_notes_and_help()
    {
        var other = File.Text.IndexOf("three", StringComparison.Ordinal);
        var finding = new Finding("supply/drop", Severity.Warning, "too much is lost", At("from"))
        {
            Help = "use thicker cable",
            Notes = [new("it ends here", new SourceSpan(File, other, 5)), new("nothing else", null)],
        };
        Assert.Equal(
            """
            warning[supply/drop]: too much is lost
             --> jobs/a.wsk.yaml:2:11
              |
            2 |     P1: 漢字 { from: a }
              |                ^^^^
              |
            3 | three
              | ----- it ends here
              = note: nothing else
              = help: use thicker cable


            """.ReplaceLineEndings("\n"),
            new FindingPrinter(new TerminalColor(false), f => "jobs/" + f.Name).Print([finding]));
    }

    [Fact]
    public void A_long_line_is_cut_to_what_is_around_the_place()
    {
        var file = new SourceFile("a", new string('x', 500) + "HERE" + new string('y', 500));
        var excerpt = Excerpt.Of(new SourceSpan(file, 500, 4));
        Assert.True(excerpt.Text.Length < 150);
        Assert.Equal("HERE", excerpt.Text.Substring(excerpt.Indent, excerpt.Marks));
        Assert.StartsWith("…", excerpt.Text, StringComparison.Ordinal);
        Assert.EndsWith("…", excerpt.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Every_stretch_of_every_line_can_be_shown()
    {
        var file = new SourceFile("a", "a\u0301\t\U0001F50A{\uD800\u0007}\nb\r\n");
        for (var start = 0; start <= file.Text.Length; start++)
        {
            for (var length = 0; start + length <= file.Text.Length; length++)
            {
                var excerpt = Excerpt.Of(new SourceSpan(file, start, length));
                Assert.True(excerpt.Marks >= 1);
                Assert.DoesNotContain('\u0007', excerpt.Text);
            }
        }
    }

    private static SourceSpan At(string words) => new(File, File.Text.IndexOf(words, StringComparison.Ordinal), words.Length);
}
