using System.Text.RegularExpressions;
using WireSketch.Diagnostics;
using WireSketch.Rules;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>No value is hidden in the words of a finding: what a sentence names with a unit, the finding holds as data.</summary>
public sealed partial class FindingValuesTests
{
    public static TheoryData<string> Ids => [.. RuleBook.All.Select(r => r.Card.Id)];

    public static TheoryData<string> Wrong => [
        .. Directory.EnumerateFiles(Path.Combine(Repository.Root, "specs", "wrong"), "*.wsk.yaml")
            .Select(f => "specs/wrong/" + Path.GetFileName(f))
            .Order(StringComparer.Ordinal)
    ];

    [Theory, MemberData(nameof(Ids))]
    public void A_number_with_a_unit_is_a_value_of_the_finding(string id)
    {
        foreach (var finding in Compiler.Compile(Example.File(RuleBook.Find(id)!.Bad), FilesInMemory.None).Findings
            .Where(f => f.Rule == id))
        {
            HoldsAll(finding);
        }
    }

    [Theory, MemberData(nameof(Wrong))]
    public void So_it_is_in_the_specs_with_mistakes(string path)
    {
        foreach (var finding in Compiler.Compile(new(path, Repository.Read(path)), ShippedSpecs.Files).Findings
            .Where(f => RuleBook.All.Any(r => r.Card.Id == f.Rule)))
        {
            HoldsAll(finding);
        }
    }

    [Theory, MemberData(nameof(Ids))]
    public void A_size_that_a_help_tells_to_make_is_wanted_as_data(string id)
    {
        foreach (var finding in Compiler.Compile(Example.File(RuleBook.Find(id)!.Bad), FilesInMemory.None).Findings
            .Where(f => f.Rule == id && f.Help is not null))
        {
            Assert.Equal(Sizes().Matches(finding.Help!).Select(m => m.Groups[1].Value), finding.Wants.Select(w => $"{w.Run} {w.Size}"));
        }
    }

    private static void HoldsAll(Finding finding)
    {
        var rest = finding.Values.Aggregate(
            finding.Message,
            (words, value) => value.Text.Length == 0 || words.IndexOf(value.Text, StringComparison.Ordinal) is not (>= 0 and var at)
                ? words : words[..at] + words[(at + value.Text.Length)..]);
        Assert.False(
            Measures().IsMatch(rest),
            $"{finding.Rule}: \"{Measures().Match(rest).Value}\" is in the words of \"{finding.Message}\" and not among its values");
        Assert.All(finding.Values, v => Assert.True(double.IsFinite(v.Value), $"{v.Text} of {finding.Rule}"));
        if (finding.Limit is { } limit && finding.Measured is { } measured)
        {
            Assert.Equal(limit.Unit, measured.Unit);
        }
    }

    [GeneratedRegex(@"(?<![\w.])\d[\d.,]* ?(mA|A|Ah|mV|V|mohm|ohm|kohm|W|kW|Hz|kHz|dB|mm2|mm|cm|m|in|ft|ms|s|min|h|days?|C|%|AWG|A²s)(?![\w²])")]
    private static partial Regex Measures();

    [GeneratedRegex(@"make (\S+ [0-9][0-9./]* (?:AWG|mm2))")]
    private static partial Regex Sizes();
}
