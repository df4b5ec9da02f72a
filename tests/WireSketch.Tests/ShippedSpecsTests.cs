using WireSketch.Diagnostics;
using WireSketch.Documents.Findings;
using WireSketch.Testing;

namespace WireSketch.Tests;

public sealed class ShippedSpecsTests
{
    public static TheoryData<string> Good => [.. ShippedSpecs.Good];

    public static TheoryData<string> Wrong => [.. ShippedSpecs.Wrong];

    [Theory, MemberData(nameof(Good))]
    public void A_good_spec_has_no_finding_but_what_it_accepts_with_a_reason(string name)
    {
        var result = Compiler.Compile(ShippedSpecs.Open(name), ShippedSpecs.Files);
        Assert.NotNull(result.Install);
        Assert.Empty(result.Findings.Where(f => f.AcceptedBecause is null).Select(f => $"{f.At}: {f.Rule}: {f.Message}"));
    }

    /// <summary>The first spec that anybody builds: even advice would look like a fault to somebody new.</summary>
    [Fact]
    public void The_smallest_spec_has_no_finding_at_all() =>
        Assert.Empty(Compiler.Compile(ShippedSpecs.Open("specs/one-amplifier.wsk.yaml"), ShippedSpecs.Files).Findings
            .Select(f => f.Message));

    [Theory, MemberData(nameof(Wrong))]
    public void A_wrong_spec_has_exactly_the_findings_beside_it(string name)
    {
        var findings = Compiler.Compile(ShippedSpecs.Open(name), ShippedSpecs.Files).Findings;
        Assert.Contains(findings, f => f.Severity > Severity.Advice);

        // Word for word what check --format short says of it, called from the root of the repository.
        var lines = FindingLines.Short(new([name], findings, f => "specs/wrong/" + f.Name));
        Baseline.Match(name.Replace(".wsk.yaml", ".findings.txt", StringComparison.Ordinal), lines);
    }

    [Fact]
    public void The_large_spec_is_what_its_generator_writes() => Baseline.Match("specs/large.wsk.yaml", LargeSpec.Write(300));
}
