using WireSketch.Diagnostics;
using WireSketch.Documents.Findings;
using WireSketch.Text;

namespace WireSketch.Tests.Documents.Findings;

public sealed class FindingLinesTests
{
    private static readonly SourceFile File = new("a.wsk.yaml", "one\ntwo\n");

    private static FindingsReport Report(params Finding[] findings) => new(["a.wsk.yaml"], [.. findings], f => f.Name);

    // Workflow commands escape % CR LF, and in properties : and , as well (documentation of GitHub Actions, from memory).
    [Fact]
    public void Words_cannot_end_an_annotation_or_begin_another()
    {
        var text = FindingLines.GitHub(Report(new Finding(
            "a/b", Severity.Warning, "50 %\r\n::error::x", new(File, 4, 3))
        { Help = "do: this, or that" }));
        Assert.Equal(
            "::warning file=a.wsk.yaml,line=2,endLine=2,col=1,endColumn=4,title=a/b::50 %25%0D%0A::error::x Help: do: this, or that\n",
            text);
    }

    [Fact]
    public void The_worst_comes_first_and_what_was_accepted_is_left_out()
    {
        var text = FindingLines.GitHub(Report(
            new("a/a", Severity.Advice, "x", File.Start),
            new("a/e", Severity.Error, "y", File.Start),
            new("a/z", Severity.Error, "z", File.Start) { AcceptedBecause = "so" }));
        Assert.Equal(["::error", "::notice"], text.TrimEnd('\n').Split('\n').Select(l => l.Split(' ')[0]));
    }

    [Fact]
    public void Invisible_characters_are_shown_as_escapes() =>
        Assert.Equal("a\\u001B[31mb\\u202Ec\\uD800😀", FindingLines.OneLine("a\u001b[31mb\u202Ec\uD800😀"));

    [Fact]
    public void The_summary_counts_in_words()
    {
        Finding Of(Severity s, string? because = null) => new("a/b", s, "x", File.Start) { AcceptedBecause = because };
        Assert.Equal("nothing to report", Report().Summary());
        Assert.Equal(
            "1 error, 2 warnings, 1 advice, 1 accepted",
            Report(
                Of(Severity.Error), Of(Severity.Warning), Of(Severity.Warning), Of(Severity.Advice), Of(Severity.Error, "so")).Summary());
    }

    [Fact]
    public void A_finding_keeps_its_fingerprint_when_lines_move_above_it()
    {
        static string Print(int start) =>
            Sarif.Write(Report(new Finding("a/b", Severity.Error, "x", new(File, start, 1)) { Subjects = ["P1"] }), [], "1.2.3")
                .Split("primaryLocationLineHash\": \"")[1][..32];
        Assert.Equal(Print(0), Print(4));
    }
}
