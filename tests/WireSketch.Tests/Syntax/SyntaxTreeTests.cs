using WireSketch.Diagnostics;
using WireSketch.Syntax;
using WireSketch.Text;

namespace WireSketch.Tests.Syntax;

public sealed class SyntaxTreeTests
{
    /// <summary>Each slip with the place (line:column) and the words that its finding points at.</summary>
    [Theory]
    [InlineData("a: 1\nb: [1, 2\nc: 3\n", "2:4 [", "never closed")]
    [InlineData("a: { b: 1\nc: { d: [1, 2] }\n", "1:4 {", "never closed")]
    [InlineData("a: [1, 2}\n", "1:9 }", "does not fit the [ on line 1")]
    [InlineData("a: { b: 1 }}\nc: 2\n", "1:12 }", "closes nothing")]
    [InlineData("a: \"x\nb: 1\n", "1:4 \"", "has no partner")]
    [InlineData("a: 'x\n", "1:4 '", "has no partner")]
    [InlineData("a:\n  b: 1\n\tc: 2\nd: 3\n", "3:1 \t", "tab")]
    [InlineData("a: 1\na: 2\n", "2:1 a", "written twice here; the first is on line 1")]
    [InlineData("a: { b: 1, c: 2, b: 3 }\n", "1:18 b", "written twice")]
    [InlineData("a: 1\nb: [\na: 2\n", "2:4 [|3:1 a", "never closed|written twice")]
    [InlineData("a: &x { b: 1 }\nc:\n  <<: *x\n", "3:3 <<", "merges maps")]
    [InlineData("a: !!str 5\n", "1:4 !!str", "is a tag")]
    [InlineData("a: !inch [1]\n", "1:4 !inch", "is a tag")]
    [InlineData("%YAML 1.2\n---\na: 1\n", "1:1 %YAML 1.2", "directive")]
    [InlineData("a: 1\n---\nb: 2\n", "2:1 ---", "second document")]
    [InlineData("a: { b:c, d: 1 }\n", "1:6 b:c", "space is missing")]
    [InlineData("a:\n  is:amplifier\n  zone: cabin\n", "2:3 is:amplifier", "space is missing")]
    [InlineData("a: { b: 1 c: 2 }\n", "1:11 c", "a comma is missing before c")]
    [InlineData("a: [b, , c]\n", "1:8 ,", "a value is expected here, and , begins none")]
    [InlineData("a: %b\n", "1:4 %", "a text cannot begin with %")]
    [InlineData("a: |x\n  y\n", "1:4 |", "the text below | or >")]
    [InlineData("a: & b\n", "1:4 &", "& and * at the beginning")]
    [InlineData("a: * b\n", "1:4 *", "& and * at the beginning")]
    [InlineData("a: ]\n", "1:4 ]", "closes nothing")]
    [InlineData("a: \"\\xZZ\"\n", "1:4 \"\\x", "backslash")]
    [InlineData("a: b\n  c: d\ne: 1\n", "2:3 c", "indented deeper than the one above")]
    [InlineData("a: \"b\" c\n", "1:8 c", "behind the end of this value")]
    [InlineData("a: x: y\n", "1:5 :", "second colon")]
    [InlineData("a: -\n", "1:4 -", "a list cannot begin behind a key")]
    [InlineData("a: @x\n", "1:4 @", "a text cannot begin with @")]
    [InlineData("a: `x\n", "1:4 `", "a text cannot begin with `")]
    [InlineData("a: \"\\q\"\n", "1:4 \"", "backslash")]
    [InlineData("a:\n  b: 1\n c: 2\nd: 3\n", "3:2 c", "indented differently")]
    [InlineData("a:\n  - b\n  c: 1\nd: 3\n", "3:3 c", "indented differently")]
    [InlineData("a: *b\n", "1:4 *b", "no such value")]
    [InlineData("a: &b [*b]\n", "1:8 *b", "no such value")]
    [InlineData("- a\n- b\n", "1:1 - a", "this is a list")]
    [InlineData("just words\n", "1:1 just words", "this is a text")]
    [InlineData("a: x\u0007y\n", "1:5 \u0007", "U+0007")]
    [InlineData("a: x\0y\n", "1:5 \0", "NUL")]
    [InlineData("a: x\u2028y\n", "1:5 \u2028", "U+2028")]
    [InlineData("[a]: 1\n", "1:1 [a]", "a key must be a word")]
    public void A_slip_is_found_where_it_is(string text, string places, string words)
    {
        var findings = SyntaxTree.Parse(new SourceFile("a", text)).Findings;

        Assert.Equal(places, string.Join('|', findings.Select(f => $"{f.At.Line}:{f.At.Column} {f.At.Words}")));
        Assert.All(words.Split('|').Zip(findings), pair => Assert.Contains(pair.First, pair.Second.Message, StringComparison.Ordinal));
        Assert.All(findings, f => Assert.False(string.IsNullOrEmpty(f.Help)));
    }

    [Fact]
    public void Half_a_character_is_found_where_it_is()
    {
        var finding = Assert.Single(SyntaxTree.Parse(new SourceFile("a", "a: x" + (char)0xD800 + "y\n")).Findings);

        Assert.Equal((1, 5, 1), (finding.At.Line, finding.At.Column, finding.At.Length));
        Assert.Contains("half a character (U+D800)", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A reader of bytes leaves a byte that is no UTF-8 as half a character, U+DC00 and the byte: here ü and ß of Latin-1, FC and DF.
    /// </summary>
    [Fact]
    public void A_file_in_another_encoding_is_one_finding_and_is_read_all_the_same()
    {
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", "shop: M" + (char)0xDCFC + "ller Stra" + (char)0xDCDF + "e\nb: 1\n"));

        var finding = Assert.Single(findings);
        Assert.Equal((1, 8, 1), (finding.At.Line, finding.At.Column, finding.At.Length));
        Assert.Contains(
            "not UTF-8: the byte FC that stands here is no character of it, and 1 more",
            finding.Message,
            StringComparison.Ordinal);
        Assert.Contains("save the file as UTF-8", finding.Help, StringComparison.Ordinal);
        Assert.Equal("M\u00fcller Stra\u00dfe", Assert.IsType<ScalarNode>(tree.Root.Find("shop")?.Value).Value);
    }

    [Theory]
    [InlineData("w\0i\0r\0e\0s\0:\0 \0", "UTF-16")]
    [InlineData("\0w\0i\0r\0e\0s\0:\0 ", "UTF-16")]
    [InlineData("a: 1\n\0\0\0\0\0b: {\0", "no text")]
    [InlineData(
        "\u0001\u0002\u0003\u0004\u0005\u0006\u0007\u0008\u000b\u000c\u000e\u000f"
            + "\u0010\u0011\u0012\u0013\u0014\u0015\u0016\u0017\u0018\u0019 {",
        "no text")]
    public void What_is_no_text_is_one_finding(string text, string words)
    {
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", text));

        Assert.Contains(words, Assert.Single(findings).Message, StringComparison.Ordinal);
        Assert.True(tree.Broken);
    }

    [Fact]
    public void One_slip_hides_nothing()
    {
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", """
            job: { title: x
            gear:
              a: { is: lamp }
              b: { is: [lamp }
              c:
                is: lamp
                zone: @cabin
                place: there
              d: { is: lamp }
            runs:
              P1: { from: a.+, to: "b.+ }
              P2: { from: a.-, to: b.- }
            """));

        Assert.Equal([1, 4, 7, 11], findings.Select(f => f.At.Line));
        Assert.True(tree.Broken);
        var gear = Assert.IsType<MapNode>(tree.Root.Find("gear")?.Value);
        Assert.Equal(["a", "c", "d"], gear.Entries.Select(e => e.Key.Value));
        Assert.Equal(["is", "place"], Assert.IsType<MapNode>(gear.Find("c")?.Value).Entries.Select(e => e.Key.Value));
        Assert.Equal(["P2"], Assert.IsType<MapNode>(tree.Root.Find("runs")?.Value).Entries.Select(e => e.Key.Value));
    }

    [Fact]
    public void Tabs_are_mended_by_the_fix_and_what_they_indent_is_read_all_the_same()
    {
        const string Text = "a:\n\tb: 1\n\tc:\n\t\td: 2\ne: 3\n";
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", Text));

        var finding = Assert.Single(findings);
        Assert.Contains("3 lines", finding.Message, StringComparison.Ordinal);
        Assert.False(tree.Broken);
        Assert.Equal(
            "2",
            Assert.IsType<ScalarNode>(
                Assert.IsType<MapNode>(Assert.IsType<MapNode>(tree.Root.Find("a")?.Value).Find("c")?.Value).Find("d")?.Value).Value);
        var mended = Mend(Text, finding);
        Assert.Empty(SyntaxTree.Parse(new SourceFile("a", mended)).Findings);
    }

    [Fact]
    public void A_missing_space_is_mended_by_the_fix_and_read_as_meant()
    {
        const string Text = "a: { b:c, d: 1 }\n";
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", Text));

        Assert.Equal("a: { b: c, d: 1 }\n", Mend(Text, Assert.Single(findings)));
        Assert.Equal("c", Assert.IsType<ScalarNode>(Assert.IsType<MapNode>(tree.Root.Find("a")?.Value).Find("b")?.Value).Value);
    }

    [Fact]
    public void Words_that_other_programs_take_for_something_else_stay_words()
    {
        var tree =
            SyntaxTree.Parse(new SourceFile(
                "a",
                "a: yes\nb: 12:30\nc: 80 %\nd: -3 dB\ne: battery.+\nf: { g: amp.-, h: 2 x 4 ohm }\ni: on\nj: 1_000\nk: 0o17\n")).Value;

        Assert.Equal(
            ["yes", "12:30", "80 %", "-3 dB", "battery.+", "on", "1_000", "0o17"],
            tree.Root.Entries.Select(e => e.Value).OfType<ScalarNode>().Select(s => s.Value));
        Assert.Equal(
            ["amp.-", "2 x 4 ohm"],
            Assert.IsType<MapNode>(tree.Root.Find("f")?.Value).Entries.Select(e => ((ScalarNode)e.Value).Value));
    }

    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_first_key()
    {
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", "\uFEFFwiresketch: 1\n"));

        Assert.Empty(findings);
        Assert.Equal("wiresketch", Assert.Single(tree.Root.Entries).Key.Value);
    }

    [Theory]
    [InlineData("\n")]
    [InlineData("\r\n")]
    public void Places_are_the_same_with_either_line_end(string lineEnd)
    {
        var tree = SyntaxTree.Parse(new SourceFile("a", string.Join(lineEnd, "a: 1", "b:", "  c: [x, y]", ""))).Value;

        var list = Assert.IsType<ListNode>(Assert.IsType<MapNode>(tree.Root.Find("b")?.Value).Find("c")?.Value);
        Assert.Equal("3:6 [x, y]", $"{list.At.Line}:{list.At.Column} {list.At.Words}");
    }

    [Fact]
    public void Comments_are_kept_with_their_places()
    {
        var tree = SyntaxTree.Parse(new SourceFile("a", "# one\na: 1 # two\nb: \"# no\" # three\nc: |\n  # no\n# four\nd: x#no\n")).Value;

        Assert.Equal(["# one", "# two", "# three", "# four"], tree.Comments.Select(c => c.At.Words));
        Assert.Equal([false, true, true, false], tree.Comments.Select(c => c.Inline));
    }

    [Fact]
    public void Aliases_stand_for_what_they_name()
    {
        var tree = SyntaxTree.Parse(new SourceFile("a", "a: &x { b: 1 }\nc: *x\n")).Value;

        var alias = Assert.IsType<AliasNode>(tree.Root.Find("c")?.Value);
        Assert.Equal("*x", alias.At.Words);
        Assert.Same(tree.Root.Find("a")?.Value, alias.Meant);
        Assert.Equal("{ b: 1 }", alias.Meant.At.Words);
    }

    /// <summary>
    /// YAML 1.2.2, examples 2.10, 7.1, 7.2 (without its tag), 7.13, 7.15, 7.20, 7.21 and section 6.9.2: an anchor stands before any node,
    /// in a flow map as elsewhere.
    /// </summary>
    [Theory]
    [InlineData("hr:\n  - Mark\n  # Following node labeled SS\n  - &SS Sammy\nrbi:\n  - *SS # Subsequent occurrence\n  - "
        + "Ken\n", "hr=[Mark|Sammy] rbi=[Sammy|Ken]")]
    [InlineData("First occurrence: &anchor Foo\nSecond occurrence: *anchor\nOverride anchor: &anchor Bar\nReuse anchor: "
        + "*anchor\n", "First occurrence=Foo Second occurrence=Foo Override anchor=Bar Reuse anchor=Bar")]
    [InlineData("{\n  a: &c 4 ohm, b: *c, d: &e\n    two words, f: *e,\n}\n", "a=4 ohm b=4 ohm d=two words f=two words")]
    [InlineData("{ a: &c 4, b: &d 'quoted, words', e: &f \"x\", g: &h [1, 2], i: &j { k: &l m }, n: *c, o: *d, p: *f, q: *h, r: *j, s: "
        + "*l }\n", "a=4 b=quoted, words e=x g=[1|2] i={k=m} n=4 o=quoted, words p=x q=[1|2] r={k=m} s=m")]
    [InlineData("a: [ &one left side, &two b, *one, *two ]\n", "a=[left side|b|left side|b]")]
    [InlineData("a: { &k key words: v, other: *k }\n", "a={key words=v other=key words}")]
    [InlineData("a: { unquoted : \"separate\", omitted value:, b: \"adjacent\", c: &x , d: end "
        + "}\n", "a={unquoted=separate omitted value= b=adjacent c= d=end}")]
    [InlineData("a: [ &x { one: two, }, *x, ]\n", "a=[{one=two}|{one=two}]")]
    public void An_anchor_names_a_value_wherever_yaml_allows_one(string text, string meant)
    {
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", text));

        Assert.Empty(findings.Select(f => f.ToString()));
        Assert.Equal(meant, Words(tree.Root)[1..^1]);
    }

    [Fact]
    public void A_comma_that_is_missing_behind_an_anchored_value_is_still_found()
    {
        var finding = Assert.Single(SyntaxTree.Parse(new SourceFile("a", "a: { b: &c \"4\" d: 1 }\n")).Findings);

        Assert.Contains("comma", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void Aliases_that_would_blow_up_are_refused()
    {
        var lines = Enumerable.Range(1, 30).Select(n => $"a{n}: &a{n} [{string.Join(", ", Enumerable.Repeat($"*a{n - 1}", 9))}]");
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", $"a0: &a0 [x, x, x]\n{string.Join('\n', lines)}\n"));

        Assert.NotEmpty(findings);
        Assert.All(findings, f => Assert.Contains("10000", f.Message, StringComparison.Ordinal));
        Assert.True(Count(tree.Root) < 50_000);
    }

    [Theory]
    [InlineData("[")]
    [InlineData("{a: ")]
    public void Deep_nesting_is_refused(string opening)
    {
        var findings = SyntaxTree.Parse(new SourceFile("a", "a: " + string.Concat(Enumerable.Repeat(opening, 5000)))).Findings;

        Assert.Single(findings);
    }

    [Fact]
    public void A_file_may_be_nested_as_deep_as_is_said_and_no_deeper()
    {
        static string Nested(int levels) => "a: " + new string('[', levels) + new string(']', levels) + "\n";

        Assert.Empty(SyntaxTree.Parse(new SourceFile("a", Nested(SyntaxTree.DeepestNesting - 1))).Findings);
        Assert.Contains(
            "64 levels",
            Assert.Single(SyntaxTree.Parse(new SourceFile("a", Nested(SyntaxTree.DeepestNesting))).Findings).Message,
            StringComparison.Ordinal);
    }

    [Fact]
    public void A_file_that_is_too_large_is_refused()
    {
        var finding = Assert.Single(SyntaxTree.Parse(new SourceFile("a", new string('#', SyntaxTree.LargestFile + 1))).Findings);

        Assert.Contains("is the most", finding.Message, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("")]
    [InlineData("\n\n")]
    [InlineData("# only a comment\n")]
    [InlineData("---\n")]
    [InlineData("---\n...\n")]
    public void An_empty_file_is_an_empty_tree(string text)
    {
        var (tree, findings) = SyntaxTree.Parse(new SourceFile("a", text));

        Assert.Empty(findings);
        Assert.Empty(tree.Root.Entries);
    }

    private static string Mend(string text, Finding finding) =>
        finding.Fixes[0].Edits.OrderByDescending(e => e.At.Start)
            .Aggregate(text, (t, e) => t.Remove(e.At.Start, e.At.Length).Insert(e.At.Start, e.Words));

    private static string Words(SyntaxNode node) => node.Meant switch
    {
        MapNode map => $"{{{string.Join(' ', map.Entries.Select(e => $"{e.Key.Value}={Words(e.Value)}"))}}}",
        ListNode list => $"[{string.Join('|', list.Items.Select(Words))}]",
        var scalar => ((ScalarNode)scalar).Value,
    };

    private static long Count(SyntaxNode node) => node.Meant switch
    {
        MapNode map => 1 + map.Entries.Sum(e => 1 + Count(e.Value)),
        ListNode list => 1 + list.Items.Sum(Count),
        _ => 1,
    };
}
