using System.Text.RegularExpressions;
using WireSketch.Rules;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

public sealed partial class RuleBookTests
{
    public static TheoryData<string> Ids => [.. RuleBook.Cards.Select(c => c.Id)];

    public static TheoryData<string> Groups => [.. RuleBook.Cards.Select(c => c.Id.Split('/')[0]).Distinct(StringComparer.Ordinal)];

    [Fact]
    public void Every_rule_class_is_in_the_book()
    {
        var written = typeof(Rule).Assembly.GetTypes()
            .Where(t => !t.IsAbstract && t.IsSubclassOf(typeof(Rule)))
            .Select(t => t.Name)
            .Order(StringComparer.Ordinal);
        Assert.Equal(written, RuleBook.All.Select(r => r.GetType().Name).Order(StringComparer.Ordinal));
    }

    [Fact]
    public void Ids_are_unique() =>
        Assert.Equal(RuleBook.Cards.Length, RuleBook.Cards.Select(c => c.Id).Distinct(StringComparer.Ordinal).Count());

    public static TheoryData<string> RuleIds => [.. RuleBook.All.Select(r => r.Card.Id)];

    [Theory, MemberData(nameof(RuleIds))]
    public void An_id_says_what_is_wrong_and_not_what_to_do(string id)
    {
        Assert.Matches(Shape(), id);
        var slug = id[(id.IndexOf('/', StringComparison.Ordinal) + 1)..];
        Assert.DoesNotMatch(Command(), slug);
    }

    [Theory, MemberData(nameof(Ids))]
    public void A_card_gives_reason_basis_and_two_examples(string id)
    {
        var card = Card(id);
        Assert.False(string.IsNullOrWhiteSpace(card.Title), "title");
        Assert.False(card.Title.EndsWith('.'), "a title is no sentence with a full stop");
        Assert.True(card.Why.Length > 40, "why");
        Assert.False(string.IsNullOrWhiteSpace(card.Basis.ToString()), "basis");
        Assert.Contains(Marks.In(card.Bad), m => m.EndsWith(" " + id, StringComparison.Ordinal));
        Assert.False(string.IsNullOrWhiteSpace(card.Good), "good");
        Assert.DoesNotContain(Marks.In(card.Good), m => m.EndsWith(" " + id, StringComparison.Ordinal));
    }

    [Fact]
    public void Rules_of_one_group_stand_together()
    {
        var groups = RuleBook.Cards.Select(c => c.Id.Split('/')[0]).ToArray();
        Assert.Equal(groups.Distinct(StringComparer.Ordinal).Count(), groups.Where((g, i) => i == 0 || groups[i - 1] != g).Count());
    }

    /// <summary>Renaming, losing or softening a rule must show in a review.</summary>
    [Theory, MemberData(nameof(Groups))]
    public void The_catalog_is_as_it_was(string group)
    {
        var lines = RuleBook.Cards.Where(c => c.Id.StartsWith(group + "/", StringComparison.Ordinal))
            .Select(c => $"{c.Id} | {c.Severity} | {c.Title}\n");
        Baseline.Match($"tests/WireSketch.Tests/Rules/Catalog/{group}.txt", string.Concat(lines));
    }

    /// <summary>
    /// An id that is written anywhere in the product and explained nowhere would be a dead end for the user; so would a card of nothing.
    /// </summary>
    [Fact]
    public void Every_id_that_the_product_writes_has_a_card()
    {
        var written = Directory.EnumerateFiles(Path.Combine(Repository.Root, "src"), "*.cs", SearchOption.AllDirectories)
            .Where(f =>
                !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                    && !f.EndsWith("FormerRuleIds.cs", StringComparison.Ordinal))
            .SelectMany(f => Literal().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))
            .Where(id => FormerRuleIds.NowOf(id) is null).Distinct(StringComparer.Ordinal).Order(StringComparer.Ordinal);
        Assert.Equal(RuleBook.Cards.Select(c => c.Id).Order(StringComparer.Ordinal), written);
    }

    [Theory]
    [InlineData("supply/drops", "supply/drop")]
    [InlineData("load/coil-revresed", "load/coil-reversed")]
    [InlineData("wiring/unfused", "supply/unfused")]
    [InlineData("spec/unkown-key", "spec/unknown-key")]
    public void A_mistyped_id_gets_the_one_that_was_meant(string written, string meant)
    {
        Assert.Null(RuleBook.Find(written));
        Assert.Equal(meant, RuleBook.NearestTo(written));
    }

    [Fact]
    public void An_id_that_is_like_none_gets_no_suggestion() => Assert.Null(RuleBook.NearestTo("zzzzzzzzzzzz"));

    [Fact]
    public void The_page_of_findings_is_as_committed() => Baseline.Match("specs/reference/rules.md", RulePages.Write());

    private static RuleCard Card(string id) => RuleBook.Find(id)!;

    [GeneratedRegex("\"((?:supply|ground|load|signal|turn-on|source|energy|route|spec)/[a-z]+(?:-[a-z]+)*)\"")]
    private static partial Regex Literal();

    [GeneratedRegex("^(supply|ground|load|signal|turn-on|source|energy|route|spec)/[a-z]+(-[a-z]+)*$")]
    private static partial Regex Shape();

    /// <summary>A name must not be a command ("use-loom"), nor a denial of one: those stop making sense when a rule grows.</summary>
    [GeneratedRegex("^(use|check|do-not|avoid|prefer|ensure|should|must|fix|add|missing-check|validate)(-|$)")]
    private static partial Regex Command();
}
