using System.Globalization;
using System.Text.Json;
using System.Text.Json.Nodes;
using Json.Schema;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Syntax;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>The schema is judged by a general validator of draft-07, JsonSchema.Net.</summary>
public sealed class SchemaTests
{
    private static readonly JsonSchema Schema = JsonSchema.FromText(SpecSchema.Write());

    public static TheoryData<string> Examples() => [
        .. Specs("specs", SearchOption.TopDirectoryOnly),
        .. Specs("specs/parts", SearchOption.TopDirectoryOnly)
    ];

    /// <summary>What a schema can see: keys, kinds, units and words. It knows no names, and sees no slip of syntax.</summary>
    public static TheoryData<string> Wrong() =>
        [
            .. Specs("specs/wrong", SearchOption.TopDirectoryOnly).Where(
                p =>
                    Findings(p).Any(f => f.Rule is "spec/unknown-key" or "spec/unknown-kind" or "spec/unit" or "spec/value" or "spec/type"))
        ];

    [Theory]
    [MemberData(nameof(Examples))]
    public void Every_example_fits_the_schema(string path) => Assert.Empty(Errors(Repository.Read(path)));

    [Theory]
    [MemberData(nameof(Wrong))]
    public void A_wrong_spec_that_a_schema_can_judge_does_not_fit(string path) => Assert.NotEmpty(Errors(Repository.Read(path)));

    [Fact]
    public void Some_wrong_specs_can_be_judged() => Assert.True(Wrong().Count >= 4);

    [Theory]
    [InlineData("gear: { a: { is: battery, capacity: 60 Ah } }", true)]
    [InlineData("gear: { a: { is: battery, capacity: 60 } }", false)]
    [InlineData("gear: { a: { is: battery, capacity: 60 A } }", false)]
    [InlineData("gear: { a: { part: b, capacity: 60 A } }", true)]
    [InlineData("runs: { P1: { from: a.+, to: c, length: 13 ft 3 in } }", true)]
    [InlineData("runs: { P1: { from: a.+, to: c, length: 15 1/2 ft } }", true)]
    [InlineData("runs: { P1: { from: a.+, to: c, length: 13 ft 3 } }", false)]
    [InlineData("gear: { a: { zone: dash } }", false)]
    [InlineData("gear: { a: { is: passive crossover, outputs: { low: { band: 20 to 2500 Hz } } } }", true)]
    [InlineData("gear: { a: { is: fuse block, fuses: { 1: 15 A } } }", true)]
    [InlineData("gear: { a: { is: fuse block, fuses: { one: 15 A } } }", false)]
    [InlineData("runs: { P1: { from: [a.+, b.+], to: c, wire: 4 AWG, fuse: 60 A } }", true)]
    [InlineData("runs: { P1: { from: a.+ } }", false)]
    [InlineData("runs: { P1: { from: a.+, to: c, fuse: 60 A, breaker: 60 A } }", false)]
    public void Small_cases_fit_or_not(string words, bool fits) =>
        Assert.Equal(fits, Errors("wiresketch: 1\njob: { title: t }\n" + words + "\n").Count == 0);

    private static List<string> Errors(string text)
    {
        var tree = SyntaxTree.Parse(new SourceFile("a", text)).Value;
        var result = Schema.Evaluate(
            JsonSerializer.SerializeToElement(Json(tree.Root)),
            new EvaluationOptions { OutputFormat = OutputFormat.List });
        return result.IsValid
            ? []
            : [
                .. (result.Details ?? []).Where(d => d.Errors is not null)
                    .SelectMany(d => d.Errors!.Select(e => $"{d.InstanceLocation}: {e.Value}"))
            ];
    }

    private static IEnumerable<Finding> Findings(string path) =>
        SpecReader.Read(new SourceFile(path, Repository.Read(path)), FilesInMemory.None).Findings;

    private static IEnumerable<string> Specs(string folder, SearchOption option) =>
        Directory.EnumerateFiles(Path.Combine(Repository.Root, folder), "*.yaml", option)
            .Select(p => Path.GetRelativePath(Repository.Root, p).Replace('\\', '/'))
            .Order(StringComparer.Ordinal);

    /// <summary>As an editor sees it: scalars by the core schema of YAML 1.2.</summary>
    private static JsonNode? Json(SyntaxNode node) => node.Meant switch
    {
        MapNode map => new JsonObject(map.Entries.Select(e => KeyValuePair.Create(e.Key.Value, Json(e.Value)))),
        ListNode list => new JsonArray([.. list.Items.Select(Json)]),
        ScalarNode { IsNull: true } => null,
        ScalarNode { Style: ScalarForm.Plain, Value: "true" or "false" } s => JsonValue.Create(s.Value == "true"),
        ScalarNode { Style: ScalarForm.Plain } s when decimal.TryParse(
            s.Value,
            NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint,
            CultureInfo.InvariantCulture,
            out var number) =>
            JsonValue.Create(number),
        ScalarNode s => JsonValue.Create(s.Value),
        _ => throw new InvalidOperationException(),
    };
}
