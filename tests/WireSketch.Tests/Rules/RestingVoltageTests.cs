using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>
/// Figures that no real part has. Six lead cells rest at 12.6 V and are charged with some 14.2 V; insulation is made for 60 C to 260 C:
/// common practice, no published source.
/// </summary>
public sealed class RestingVoltageTests
{
    [Theory]
    [InlineData("rest: 25.2 V", true)]
    [InlineData("rest: 6 V", true)]
    [InlineData("rest: 12.4 V", false)]
    [InlineData("rest: 13.3 V", false)]
    public void Volts_at_rest_go_with_the_running_volts(string rest, bool told) =>
        Assert.Equal(told, Compile("capacity: 60 Ah", "capacity: 60 Ah, " + rest).Any(f => f.Rule == "energy/resting-voltage"));

    [Theory]
    [InlineData("4 AWG red 5000 C", true)]
    [InlineData("4 AWG red 40 C", true)]
    [InlineData("4 AWG red 150 C", false)]
    public void Insulation_is_rated_for_what_insulation_can_be(string wire, bool told) =>
        Assert.Equal(told, Compile("4 AWG red", wire).Any(f => f.Message.Contains("insulation is rated", StringComparison.Ordinal)));

    private static IEnumerable<Finding> Compile(string was, string becomes)
    {
        Assert.Contains(was, Examples.BassUpgrade, StringComparison.Ordinal);
        return Compiler.Compile(
            Example.File(Examples.BassUpgrade.Replace(was, becomes, StringComparison.Ordinal)),
            FilesInMemory.None).Findings;
    }
}
