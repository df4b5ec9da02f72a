using WireSketch.Diagnostics;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Rules;

public sealed class MarksTests
{
    private static readonly SourceFile File = new("a.yaml", "one\ntwo\nthree\n");

    [Fact]
    public void A_mark_is_its_line_and_its_id() =>
        Assert.Equal(["002 supply/drop", "002 supply/insufficient"], Marks.In("a\nb #! supply/drop supply/insufficient\nc # not a mark"));

    [Fact]
    public void Errors_and_warnings_count_and_other_advices_do_not() =>
        Assert.Equal(
            ["001 x/error", "002 x/warning"],
            Marks.Of([Of("x/warning", Severity.Warning, 4), Of("x/error", Severity.Error, 0), Of("x/advice", Severity.Advice, 8)], []));

    [Fact]
    public void An_advice_counts_where_it_is_expected() =>
        Assert.Equal(["003 x/advice"], Marks.Of([Of("x/advice", Severity.Advice, 8)], ["003 x/advice"]));

    [Fact]
    public void A_finding_that_was_accepted_does_not_count() =>
        Assert.Empty(Marks.Of([Of("x/error", Severity.Error, 0) with { AcceptedBecause = "measured" }], []));

    [Fact]
    public void Two_findings_alike_are_two_marks() =>
        Assert.Equal(2, Marks.Of([Of("x/error", Severity.Error, 0), Of("x/error", Severity.Error, 1)], []).Length);

    [Fact]
    public void A_fragment_is_made_whole_by_what_it_lacks()
    {
        Assert.Equal("wiresketch: 1\njob: { title: Example }\ngear: {}\n", Example.Whole("gear: {}"));
        Assert.Equal("wiresketch: 1\njob:\n  title: Own\n", Example.Whole("job:\n  title: Own\n"));
    }

    private static Finding Of(string rule, Severity severity, int start) => new(rule, severity, "x", new(File, start, 1));
}
