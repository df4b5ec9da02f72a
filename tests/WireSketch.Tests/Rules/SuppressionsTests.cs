using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Rules;
using WireSketch.Text;

namespace WireSketch.Tests.Rules;

public sealed class SuppressionsTests
{
    private const string Rule = "route/no-length";

    private static readonly SourceFile File = new("a.yaml", "P1 amp accept");

    [Fact]
    public void A_matching_finding_gets_the_reason_and_blocks_no_more()
    {
        var finding = Assert.Single(Suppressions.Apply(Spec(Entry(Rule, "P1", "measured on the car")), [Found("P1")]));
        Assert.Equal("measured on the car", finding.AcceptedBecause);
        Assert.False(finding.Blocks);
    }

    [Fact]
    public void A_device_stands_for_its_terminals_but_not_for_one_whose_name_begins_alike()
    {
        var findings = Suppressions.Apply(Spec(Entry(Rule, "amp", "looked at")), [Found("amp.+"), Found("amp2")]);
        Assert.Equal(["looked at", null], findings.Select(f => f.AcceptedBecause));
    }

    [Fact]
    public void An_entry_accepts_every_finding_it_matches() =>
        Assert.All(
            Suppressions.Apply(Spec(Entry(Rule, "P1", "looked at")), [Found("P1"), Found("P2", "P1")]),
            f => Assert.NotNull(f.AcceptedBecause));

    [Theory]
    [InlineData("supply/no-such", "P1", "looked at", "there is no rule")]
    [InlineData("spec/reference", "P1", "looked at", "cannot be accepted")]
    [InlineData(Rule, "P9", "looked at", "broken at P1 and not there")]
    [InlineData(Rule, "P1", " ", "without a reason")]
    [InlineData(Rule, null, "looked at", "does not say where")]
    [InlineData(null, "P1", "looked at", "names no rule")]
    public void An_entry_that_accepts_nothing_is_a_finding(string? rule, string? at, string because, string says)
    {
        var findings = Suppressions.Apply(Spec(Entry(rule, at, because)), [Found("P1")]);
        Assert.Null(findings.Single(f => f.Rule == Rule).AcceptedBecause);
        var idle = findings.Single(f => f.Rule == Suppressions.Unmatched);
        Assert.Equal(Severity.Warning, idle.Severity);
        Assert.Contains(says, idle.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Nothing_accepted_changes_nothing()
    {
        Finding[] findings = [Found("P1")];
        Assert.Equal(findings, Suppressions.Apply(Spec(), [.. findings]));
    }

    private static Spec Spec(params AcceptEntry[] entries) => new() { File = File, Accepted = [.. entries] };

    private static Finding Found(params string[] subjects) => new(Rule, Severity.Error, "x", new(File, 0, 2)) { Subjects = [.. subjects] };

    private static AcceptEntry Entry(string? rule, string? at, string because) => new()
    {
        Place = new(File, 7, 6),
        Rule = Words(rule),
        At = Words(at),
        Because = Words(because),
        Severity = Severity.Error,
    };

    private static Written<string>? Words(string? words) => words is null ? null : new(words, words, new(File, 7, 6));
}
