using System.Globalization;
using System.Text;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests;

public sealed class ShippedSpecsTests
{
    public static TheoryData<string> Good => [.. ShippedSpecs.Good];

    public static TheoryData<string> Wrong => [.. ShippedSpecs.Wrong];

    [Theory, MemberData(nameof(Good))]
    public void A_good_spec_has_no_error_and_no_warning(string name)
    {
        var result = Compiler.Compile(ShippedSpecs.Open(name), ShippedSpecs.Files);
        Assert.NotNull(result.Install);
        Assert.Empty(result.Findings.Where(f => f.Severity > Severity.Advice && f.AcceptedBecause is null).Select(f => $"{f.At}: {f.Rule}: {f.Message}"));
    }

    [Theory, MemberData(nameof(Wrong))]
    public void A_wrong_spec_has_exactly_the_findings_beside_it(string name)
    {
        var findings = Compiler.Compile(ShippedSpecs.Open(name), ShippedSpecs.Files).Findings.Where(f => f.Severity > Severity.Advice).ToList();
        Assert.NotEmpty(findings);
        var text = new StringBuilder();
        foreach (var f in findings)
        {
            text.Append(CultureInfo.InvariantCulture, $"{f.At.Line}:{f.At.Column} {f.Severity} {f.Rule}: {f.Message}\n");
        }

        Baseline.Match(name.Replace(".wsk.yaml", ".findings.txt", StringComparison.Ordinal), text.ToString());
    }

    [Fact]
    public void The_large_spec_is_what_its_generator_writes() => Assert.Equal(LargeSpec.Write(300), Repository.Read("specs/large.wsk.yaml"));
}
