using System.Collections.Immutable;
using CsCheck;
using WireSketch.Diagnostics;
using WireSketch.Syntax;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Syntax;

public sealed class SyntaxPropertyTests
{
    [Fact]
    public void Any_text_gives_a_tree_and_findings_within_the_file() => Gen.String.Sample(Holds);

    [Fact]
    public void A_spec_with_slips_gives_a_tree_and_findings_within_the_file() =>
        Mutations.Of(Examples.BassUpgrade).Sample(Holds, iter: 500);

    [Fact]
    public void Text_made_of_yaml_signs_gives_a_tree_and_findings_within_the_file() =>
        Gen.Char["{}[]:,-#&*!|>'\"%@` \t\n.?ab~<="].Array[0, 60].Select(c => new string(c)).Sample(Holds, iter: 5000);

    [Fact]
    public void A_valid_spec_has_no_finding_and_its_spans_hold()
    {
        Assert.Empty(SyntaxTree.Parse(new SourceFile("a", Examples.BassUpgrade)).Findings);
        Holds(Examples.BassUpgrade);
    }

    /// <summary>Texts that chance once found.</summary>
    [Theory]
    [InlineData(":[&\t-:\n*.||b:.@'~:%<?<'@!-:\t*- #{")]
    [InlineData("a: { b: 6,0 ohm }\n")]
    [InlineData("a:\n  wakes-on: [remot:, dc offset]\n  input: { line: 1 V }\n")]
    [InlineData("a: [b:, c]\n")]
    [InlineData("a: [c, b:]\n")]
    [InlineData("{a: [b:, c]}\n")]
    [InlineData("{a: [b: d, c]}\n")]
    [InlineData("a: { b: amp.sub, to\u2028 sub.coils, c: d }\n")]
    public void A_text_that_once_failed_holds(string text) => Holds(text);

    private static void Holds(string text)
    {
        var file = new SourceFile("a", text);
        var (tree, findings) = SyntaxTree.Parse(file);
        foreach (var finding in findings)
        {
            Inside(finding.At, text);
            Assert.All(finding.Notes.Where(n => n.At is not null), n => Inside(n.At!.Value, text));
            Assert.All(finding.Fixes.SelectMany(f => f.Edits), e => Inside(e.At, text));
        }

        Assert.True(findings.Length > 0 || !tree.Broken, "what is left out is reported");
        Inside(tree.Root.At, text);
        Spans(tree.Root, text, findings);
        Assert.All(tree.Comments, c => Assert.Equal('#', text[c.At.Start]));
    }

    private static void Spans(SyntaxNode node, string text, ImmutableArray<Finding> findings)
    {
        switch (node)
        {
            case MapNode map:
                foreach (var entry in map.Entries)
                {
                    Assert.True(map.At.Holds(entry.Key.At), "a key lies in its map");
                    Assert.True(entry.Value.At.Length == 0 || map.At.Holds(entry.Value.At), "a value lies in its map");
                    Spans(entry.Key, text, findings);
                    Spans(entry.Value, text, findings);
                }

                if (map.Flow)
                {
                    Assert.True(
                        map.At.Words is ['{', .., '}'] || map.Entries.Length == 1,
                        $"a flow map is within its brackets: {map.At.Words}");
                }

                break;
            case ListNode list:
                foreach (var item in list.Items)
                {
                    Assert.True(item.At.Length == 0 || list.At.Holds(item.At), "an item lies in its list");
                    Spans(item, text, findings);
                }

                if (list.Flow)
                {
                    Assert.True(list.At.Words is ['[', .., ']'], $"a flow list is within its brackets: {list.At.Words}");
                }

                break;
            case ScalarNode scalar:
                Inside(scalar.At, text);
                ReadsBack(scalar, findings);
                break;
        }
    }

    /// <summary>The slice of a scalar is what was read: word for word if it is plain, between its quotes otherwise.</summary>
    private static void ReadsBack(ScalarNode scalar, ImmutableArray<Finding> findings)
    {
        var words = scalar.At.Words;
        switch (scalar.Style)
        {
            case ScalarForm.Plain when !words.Contains('\n', StringComparison.Ordinal) && !words.Contains('\r', StringComparison.Ordinal):
                // A decimal comma is read as the point it stands for, once that is said.
                var mended = findings.Any(f => f.At == scalar.At);
                Assert.Equal(mended ? Bare(scalar.Value) : scalar.Value, mended ? Bare(Seen(words)) : Seen(words));
                break;
            case ScalarForm.SingleQuoted when !words.Contains('\n', StringComparison.Ordinal)
                && !words.Contains('\r', StringComparison.Ordinal):
                Assert.Equal($"'{scalar.Value.Replace("'", "''", StringComparison.Ordinal)}'", Seen(words));
                break;
            case ScalarForm.DoubleQuoted:
                Assert.True(words is ['"', .., '"'], words);
                break;
            case ScalarForm.Block:
                Assert.True(words[0] is '|' or '>', words);
                break;
        }
    }

    private static string Bare(string number) =>
        number.Replace(",", "", StringComparison.Ordinal).Replace(".", "", StringComparison.Ordinal);

    /// <summary>Characters that may not be in a spec are read as blanks.</summary>
    private static string Seen(string words) =>
        string.Concat(words.Select((c, i) =>
            char.IsControl(c) && c != '\t' || c is '\u2028' or '\u2029' or '\uFEFF' or '\uFFFE' or '\uFFFF' || Lone(words, i) ? ' ' : c));

    private static bool Lone(string words, int i) =>
        (char.IsHighSurrogate(words[i]) && (i + 1 == words.Length || !char.IsLowSurrogate(words[i + 1])))
            || (char.IsLowSurrogate(words[i]) && (i == 0 || !char.IsHighSurrogate(words[i - 1])));

    private static void Inside(SourceSpan at, string text) =>
        Assert.True(at.Start >= 0 && at.Length >= 0 && at.End <= text.Length, $"{at.Start}+{at.Length} lies in {text.Length}");
}
