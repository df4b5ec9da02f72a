using System.Text.RegularExpressions;
using WireSketch.Diagnostics;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Tests.Language;

public sealed partial class LanguageFindingsTests
{
    public static TheoryData<string> Ids => [.. LanguageFindings.All.Select(f => f.Id)];

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_wrong_example_gives_its_finding_at_its_line_and_nothing_else(string id)
    {
        var text = Example.Whole(LanguageFindings.Of(id)!.Bad);

        Assert.Equal(Marks.In(text), Marks.Of(Findings(text), Marks.In(text)));
        Assert.Contains(Marks.In(text), m => m.EndsWith(id, StringComparison.Ordinal));
    }

    [Theory]
    [MemberData(nameof(Ids))]
    public void The_mended_example_gives_none(string id) =>
        Assert.Empty(Findings(Example.Whole(LanguageFindings.Of(id)!.Good)).Select(f => $"{f.At} {f.Message}"));

    [Theory]
    [MemberData(nameof(Ids))]
    public void Every_finding_says_why(string id)
    {
        var finding = LanguageFindings.Of(id)!;
        Assert.True(finding.Why.Length > 40);
        Assert.False(finding.Title.EndsWith('.'));
    }

    /// <summary>An id that is written anywhere in the reading stages and explained nowhere would be a dead end for the user.</summary>
    [Fact]
    public void Every_id_that_the_reading_stages_write_is_explained()
    {
        var written = new[] { "Syntax", "Language", "Topology" }
            .SelectMany(f =>
                Directory.EnumerateFiles(Path.Combine(Repository.Root, "src", "WireSketch", f), "*.cs", SearchOption.AllDirectories))
            .SelectMany(f => Id().Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value))
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal);

        Assert.Equal(written, LanguageFindings.All.Select(f => f.Id).Order(StringComparer.Ordinal));
    }

    private static IEnumerable<Finding> Findings(string text)
    {
        var (spec, findings) = SpecReader.Read(new SourceFile("example.wsk.yaml", text), FilesInMemory.None);
        return findings.Any(f => f.Blocks) ? findings : findings.Concat(WiringResolver.Resolve(spec, SizeChoices.None).Findings);
    }

    [GeneratedRegex("\"(spec/[a-z-]+)\"")]
    private static partial Regex Id();
}
