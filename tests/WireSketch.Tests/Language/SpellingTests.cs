using System.Text.Json.Nodes;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Syntax;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>A word that US and UK spell differently is the same word; a word of the trade is answered with the one of the language.</summary>
public sealed class SpellingTests
{
    [Theory]
    [InlineData("color", "colour")]
    [InlineData("color-at-vehicle", "colour-at-vehicle")]
    [InlineData("labor", "labour")]
    [InlineData("labor-rate", "labour-rate")]
    [InlineData("behavior", "behaviour")]
    [InlineData("aluminum", "aluminium")]
    public void A_key_is_the_same_key_either_way(string us, string uk)
    {
        Assert.Equal("x", Read($"{uk}: x", us, out var findings));
        Assert.Empty(findings);
        Assert.Equal("x", Read($"{us}: x", us, out _));
        Read($"{us}: x\n{uk}: y", us, out findings);
        var twice = Assert.Single(findings);
        Assert.Equal(("spec/duplicate-key", uk), (twice.Rule, twice.At.Words));
    }

    [Fact]
    public void Every_pair_of_the_table_is_tried_here() => Assert.Equal(6, Spelling.Keys.Length);

    [Theory]
    [InlineData("grey", "gray")]
    [InlineData("aluminium", "aluminum")]
    public void A_value_is_the_same_value_either_way(string uk, string us) => Assert.Equal(us, Spelling.Value(uk));

    [Fact]
    public void The_schema_takes_both_spellings_of_a_key_alike()
    {
        var wire = JsonNode.Parse(SpecSchema.Write())!["properties"]!["wires"]!["additionalProperties"]!["properties"]!;

        Assert.True(JsonNode.DeepEquals(wire["color"], wire["colour"]));
        Assert.NotNull(wire["colour"]);
    }

    [Theory]
    [InlineData("line output converter", "level adapter")]
    [InlineData("LOC", "level adapter")]
    [InlineData("DSP", "processor")]
    [InlineData("amp", "amplifier")]
    [InlineData("sub", "subwoofer")]
    [InlineData("radio", "head unit")]
    [InlineData("stereo", "head unit")]
    [InlineData("receiver", "head unit")]
    public void A_kind_by_its_trade_name_is_refused_with_the_right_kind(string said, string kind)
    {
        var finding = First("is: amplifier", $"is: {said}");

        Assert.Equal(("spec/unknown-kind", said), (finding.Rule, finding.At.Words));
        Assert.Equal($"write is: {kind}, if that is what is meant", finding.Help);
    }

    [Theory]
    [InlineData("amp.+", "amp.B+", "amp.+")]
    [InlineData("amp.+", "amp.12V+", "amp.+")]
    [InlineData("amp.+", "amp.hot", "amp.+")]
    [InlineData("amp.+", "amp.pos", "amp.+")]
    [InlineData("amp.+", "amp.positive", "amp.+")]
    [InlineData("amp.+", "amp+", "amp.+")]
    [InlineData("amp.-", "amp.gnd", "amp.-")]
    [InlineData("amp.-", "amp.ground", "amp.-")]
    [InlineData("amp.-", "amp.earth", "amp.-")]
    [InlineData("amp.-", "amp.neg", "amp.-")]
    [InlineData("amp.-", "amp--", "amp.-")]
    [InlineData("amp.-", "amp negative", "amp.-")]
    public void A_terminal_by_its_trade_name_is_refused_with_the_right_terminal(string right, string said, string meant)
    {
        var finding = First(right, said);

        Assert.Equal(("spec/reference", said), (finding.Rule, finding.At.Words));
        Assert.StartsWith($"did you mean {meant}?", finding.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("phono cable")]
    [InlineData("interconnect")]
    public void A_signal_lead_by_its_trade_name_is_a_line_pair(string said) =>
        Assert.Equal("write line pair", First("wire: line pair", $"wire: {said}").Help);

    [Theory]
    [InlineData("4 gauge red", "write 4 AWG red")]
    [InlineData("16 sq mm", "write 16 mm2")]
    [InlineData("2x4mm²", "write 2 x 4 mm2")]
    [InlineData("12/2 black", "write 2 x 12 AWG black")]
    [InlineData("000", "write 3/0 AWG")]
    [InlineData("red/white AWG 18", "write 18 AWG red/white")]
    public void A_size_said_across_the_counter_is_put_right(string said, string help) =>
        Assert.Equal(help, First("wire: 4 AWG red", $"wire: {said}").Help);

    private static string? Read(string text, string key, out IReadOnlyList<Finding> findings)
    {
        var tree = SyntaxTree.Parse(new SourceFile("a.wsk.yaml", text)).Value;
        var found = new SpecFindings();
        var fields = new SpecFields(found, new("x", "x", tree.File.Start), [tree.Root]);
        var value = fields.Text(key, "a word")?.Value;
        fields.Finish("a map");
        findings = found.InOrder();
        return value;
    }

    private static Finding First(string right, string wrong)
    {
        var text = Examples.BassUpgrade.ReplaceLineEndings("\n");
        var at = text.IndexOf(right, StringComparison.Ordinal);
        return Compiler.Compile(new SourceFile("a.wsk.yaml", text.Remove(at, right.Length).Insert(at, wrong)), FilesInMemory.None)
            .Findings.Where(f => f.Severity > Severity.Advice)
            .OrderBy(f => f.At.Start)
            .First();
    }
}
