using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>What may drive a speaker, and through what wire.</summary>
public sealed class SpeakerWireTests
{
    private const string S1 = "S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }";

    /// <summary>
    /// 400 W into 2 ohm are √(400/2) = 14.1 A (P = I²R). 28 AWG has 0.0810 mm² (ASTM B258), a tenth of the 0.823 mm² of 18 AWG, for which
    /// 33 CFR 183.425 Table 5 allows 10 A at 60 C: 14.1 A is far above the 1 A that is left, and above the 10 A; 16 AWG is allowed 15 A.
    /// </summary>
    [Theory]
    [InlineData("wire: 28 AWG, length: 1 ft", true)]
    [InlineData("wire: 18 AWG 60 C, length: 1 ft", true)]
    [InlineData("wire: 16 AWG 60 C, length: 1 ft", false)]
    public void Speaker_wire_is_judged_by_the_current_at_full_output(string wire, bool overloaded) =>
        Assert.Equal(
            overloaded,
            Ids(S1.Replace("wire: 12 AWG, length: 9 ft", wire, StringComparison.Ordinal)).Contains("load/wire-overloaded"));

    /// <summary>A line pair is a signal cable (its own name); common practice, no published source.</summary>
    [Fact]
    public void A_line_pair_is_no_speaker_wire() =>
        Assert.Equal(["supply/signal-cable"], Ids(S1.Replace("wire: 12 AWG", "wire: line pair", StringComparison.Ordinal)));

    [Fact]
    public void A_line_output_drives_no_speaker() =>
        Assert.Contains(
            "load/line-output",
            Ids(S1.Replace("amp.sub", "adapter.out", StringComparison.Ordinal)
                .Replace("hookup: parallel, ", "", StringComparison.Ordinal)));

    private static string[] Ids(string run)
    {
        Assert.Contains(S1, Examples.BassUpgrade, StringComparison.Ordinal);
        var compiled = Compiler.Compile(Example.File(Examples.BassUpgrade.Replace(S1, run, StringComparison.Ordinal)), FilesInMemory.None);
        Assert.True(compiled.Install is not null, string.Join("; ", compiled.Findings.Select(f => f.Message)));
        return [.. compiled.Findings.Where(f => f.Severity > Severity.Advice).Select(f => f.Rule)];
    }
}
