using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests.Topology;

public sealed class ShippedSpecsWireTests
{
    public static TheoryData<string> Specs => [.. ShippedSpecs.Good];

    [Theory, MemberData(nameof(Specs))]
    public void Every_shipped_spec_is_wired_without_a_finding(string name)
    {
        var read = SpecReader.Read(ShippedSpecs.Open(name), ShippedSpecs.Files);
        var wired = read.Then(spec => WiringResolver.Resolve(spec, SizeChoices.None));
        Assert.Empty(wired.Findings.Select(f => $"{f.At}: {f.Rule}: {f.Message} {f.Help}"));
        Assert.Equal(read.Value.Runs.Length, wired.Value.Runs.Length);
    }
}
