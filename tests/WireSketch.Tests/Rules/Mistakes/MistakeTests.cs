using WireSketch.Testing;
using WireSketch.Testing.Mistakes;

namespace WireSketch.Tests.Rules.Mistakes;

/// <summary>
/// Single mistakes made in the shipped specs: those that are unsafe or cannot work are all found, and the rate of the others does not
/// fall unseen.
/// </summary>
public sealed class MistakeTests
{
    /// <summary>Places of a kind that are tried in each spec; the benchmarks' <c>mistakes</c> tries them all.</summary>
    private const int Most = 4;

    private static readonly Lazy<Trial[]> Trials = new(() => [.. ShippedSpecs.Good.SelectMany(name =>
    {
        var spec = new GoodSpec(ShippedSpecs.Open(name), ShippedSpecs.Files);
        return MistakeTrials.Of(spec, ShippedSpecs.Files, spec.Gear.Length > 100 ? 1 : Most);
    })]);

    [Fact]
    public void Every_mistake_that_is_unsafe_or_cannot_work_is_found_as_an_error() =>
        Assert.Empty(Trials.Value.Where(t => t.Kind.IsError && !t.Caught).Select(t => $"{t.Kind.Name}, {t.Spec} {t.Place}: {t.Found}"));

    [Fact]
    public void There_are_at_least_sixty_kinds_and_each_can_be_made_somewhere()
    {
        Assert.InRange(MistakeTrials.Kinds.Length, 60, int.MaxValue);
        Assert.Empty(MistakeTrials.Kinds.Select(k => k.Name).Except(Trials.Value.Select(t => t.Kind.Name)));
    }

    [Fact]
    public void The_rates_are_as_they_were() =>
        Baseline.Match("tests/WireSketch.Tests/Rules/Mistakes/rates.txt", MistakeTrials.Table(Trials.Value));

    [Fact]
    public void Every_rule_that_a_kind_names_exists() =>
        Assert.All(MistakeTrials.Kinds.SelectMany(k => k.Rules), id => Assert.NotNull(WireSketch.Rules.RuleBook.Find(id)));

    [Fact]
    public void What_is_made_is_still_text_that_can_be_read()
    {
        var spec = new GoodSpec(ShippedSpecs.Open("specs/camper.wsk.yaml"), ShippedSpecs.Files);
        var mistakes = MistakeTrials.Kinds.SelectMany(k => k.Make(spec).Select(m => (k.Name, Text: m.In(spec.File))));
        Assert.All(
            mistakes,
            m =>
                Assert.DoesNotContain(
                    Compiler.Compile(new(spec.File.Name, m.Text), ShippedSpecs.Files).Findings,
                    f => f.Rule == "spec/syntax"));
        Assert.All(mistakes, m => Assert.NotEqual(spec.File.Text, m.Text));
    }
}
