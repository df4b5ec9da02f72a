using WireSketch.Diagnostics;
using WireSketch.Rules;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Rules;

/// <summary>The examples that rule cards show are compiled like any spec: what a card says is what happens.</summary>
public sealed class RuleExamplesTests
{
    /// <summary>What is found in a spec that could be read; the examples of the language itself are tested beside its reader.</summary>
    private static IEnumerable<RuleCard> Cards => [.. RuleBook.All.Select(r => r.Card), Suppressions.Card];

    public static TheoryData<string> Ids => [.. Cards.Select(c => c.Id)];

    [Theory, MemberData(nameof(Ids))]
    public void The_failing_example_fails_where_it_is_marked_and_nowhere_else(string id) => Compare(Card(id).Bad);

    [Theory, MemberData(nameof(Ids))]
    public void The_passing_example_has_no_error_and_no_warning(string id) => Compare(Card(id).Good);

    /// <summary>Each fix is applied by itself; whether it is the whole cure is for the reader to judge.</summary>
    [Theory, MemberData(nameof(Ids))]
    public void A_fix_leaves_a_spec_that_can_still_be_read(string id)
    {
        var file = Example.File(Card(id).Bad);
        foreach (var fix in Compile(file).SelectMany(f => f.Fixes))
        {
            var text = file.Text;
            foreach (var edit in fix.Edits.OrderByDescending(e => e.At.Start))
            {
                Assert.Same(file, edit.At.File);
                text = text[..edit.At.Start] + edit.Words + text[edit.At.End..];
            }

            var compiled = Compiler.Compile(new(file.Name, text), FilesInMemory.None);
            Assert.True(compiled.Install is not null, $"{fix.Says}: {string.Join("; ", compiled.Findings.Select(f => f.Message))}");
        }
    }

    [Theory, MemberData(nameof(Ids))]
    public void A_finding_names_what_it_concerns_and_says_what_to_do(string id)
    {
        foreach (var finding in Compile(Example.File(Card(id).Bad)).Where(f => f.Rule == id))
        {
            Assert.NotEmpty(finding.Subjects);
            Assert.False(string.IsNullOrWhiteSpace(finding.Help), finding.Message);
            Assert.DoesNotContain("  ", finding.Message, StringComparison.Ordinal);
            Assert.False(finding.Message.EndsWith('.'), finding.Message);
            Assert.DoesNotContain(
                finding.Subjects,
                s => s.Contains("NaN", StringComparison.Ordinal) || finding.Message.Contains("unlimited", StringComparison.Ordinal));
        }
    }

    private static RuleCard Card(string id) => RuleBook.Find(id)!;

    private static IEnumerable<Finding> Compile(SourceFile file) => Compiler.Compile(file, FilesInMemory.None).Findings;

    private static void Compare(string fragment)
    {
        var file = Example.File(fragment);
        var found = Compile(file).ToArray();
        var marks = Marks.In(file.Text);
        var actual = Marks.Of(found, marks);
        if (!marks.SequenceEqual(actual))
        {
            Assert.Fail($"""
                marked: {string.Join(", ", marks)}
                found:  {string.Join(", ", actual)}
                {string.Join("\n", found.Where(f => f.Severity != Severity.Advice).Select(f => $"{f.At.Line} {f.Rule}: {f.Message}"))}

                {file.Text}
                """);
        }
    }
}
