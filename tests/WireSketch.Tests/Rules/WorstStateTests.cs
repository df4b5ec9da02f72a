using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>
/// What the sun gives by day the battery must give by night: wires and fuses are judged in the state that asks most of them.
/// </summary>
public sealed class WorstStateTests
{
    [Fact]
    public void A_fuse_that_only_carries_while_the_sun_helps_is_too_small()
    {
        var finding = Findings(
            "camper",
            "fuse: { rating: 60 A, style: blade maxi, at: 5 cm }",
            "fuse: { rating: 5 A, style: blade, at: 5 cm }").Single(
            f => f.Rule == "supply/fuse-below-load");
        Assert.Equal(Severity.Error, finding.Severity);
        Assert.Contains("with the engine off", finding.Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_ground_that_is_overloaded_with_the_engine_off_is_told() =>
        Assert.Contains(
            Findings("camper", "wire: 50 mm2 black 105 C, length: 90 cm", "wire: 6 mm2 black, length: 90 cm"),
            f => f.Rule == "ground/overloaded" && f.Message.Contains("with the engine off", StringComparison.Ordinal));

    [Fact]
    public void A_battery_lead_left_to_the_compiler_carries_what_comes_back_by_the_body()
    {
        var compiled = Compile(
            "one-amplifier",
            "G2: { from: battery.-, to: strut, wire: 4 AWG black, length: 16 in }",
            "G2: { from: battery.-, to: strut, wire: auto black, length: 16 in }");
        Assert.DoesNotContain(compiled.Findings, f => f.Rule == "ground/factory-lead");
        var lead = compiled.Install!.Wiring.RunsById["G2"].Conductors[0].Index;
        Assert.True(
            compiled.Install.Answers.Conductors[lead].Ampacity!.Value.Value > 35,
            compiled.Install.Wiring.RunsById["G2"].Wire.Size.ToString());
    }

    private static IEnumerable<Finding> Findings(string spec, string before, string after) => Compile(spec, before, after).Findings;

    private static Compilation Compile(string spec, string before, string after)
    {
        var text = Repository.Read($"specs/{spec}.wsk.yaml");
        Assert.Contains(before, text, StringComparison.Ordinal);
        return Compiler.Compile(new(spec + ".wsk.yaml", text.Replace(before, after, StringComparison.Ordinal)), ShippedSpecs.Files);
    }
}
