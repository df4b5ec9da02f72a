using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Sizing;
using WireSketch.Testing;

namespace WireSketch.Tests.Sizing;

/// <summary>
/// What auto rests on. That an amplifier's own fuse bounds what it takes, and that the fuse ahead is no smaller, is common practice, no
/// published source.
/// </summary>
public sealed class AutoDemandTests
{
    private static readonly string Auto = Examples.BassUpgrade.Replace("wire: 4 AWG red", "wire: auto red", StringComparison.Ordinal)
        .Replace("rating: 60 A", "rating: auto", StringComparison.Ordinal)
        .Replace("wire: 4 AWG black", "wire: auto black", StringComparison.Ordinal);

    private static readonly string NoPower = Auto.Replace("power: { 4 ohm: 250 W, 2 ohm: 400 W }, ", "", StringComparison.Ordinal);

    [Fact]
    public void Without_a_power_table_the_amplifiers_own_fuse_is_what_it_takes()
    {
        var result = Compile(NoPower);
        var choices = AutoSizer.Size(result.Spec);
        Assert.Equal(new Amps(40), choices.Fuses["P1"]);

        // 40 A need 10 AWG at least by 33 CFR 183.425 Table 5 (60 C in the engine space); the drop of 17 ft asks for more.
        Assert.True(choices.Wires["P1"] >= WireSize.FromAwg(8), $"{choices.Wires["P1"]}");
        Assert.Equal(
            ["supply/demand-unknown"],
            result.Findings.Where(f => f.Rule.Contains("unknown", StringComparison.Ordinal) && f.At.Words == "40 A").Select(f => f.Rule));
        Assert.DoesNotContain(result.Findings, f => f.Severity > Severity.Advice);
    }

    [Fact]
    public void With_nothing_to_go_by_a_warning_says_so() =>
        Assert.Equal(
            ["supply/demand-unknown"],
            Compile(NoPower.Replace("supply: { fuse: 40 A, efficiency: 80 % }", "supply: { efficiency: 80 % }", StringComparison.Ordinal))
                .Findings.Where(f => f.Severity > Severity.Advice).Select(f => f.Rule));

    [Fact]
    public void An_auto_fuse_is_not_below_the_fuse_of_the_device_behind_it() =>
        Assert.Equal(
            new Amps(80),
            AutoSizer.Size(Compile(Auto.Replace("fuse: 40 A", "fuse: 80 A", StringComparison.Ordinal)).Spec).Fuses["P1"]);

    [Theory]
    [InlineData("25 A", true)]
    [InlineData("40 A", false)]
    public void A_fuse_ahead_of_a_larger_one_of_the_device_is_told(string rating, bool told) =>
        Assert.Equal(told, Compile(Examples.BassUpgrade.Replace("rating: 60 A", $"rating: {rating}", StringComparison.Ordinal)
            .Replace("4 ohm: 250 W, 2 ohm: 400 W", "2 ohm: 200 W", StringComparison.Ordinal)).Findings.Any(
                f => f.Rule == "supply/fuse-below-device"));

    [Fact]
    public void A_size_that_the_terminals_do_not_take_is_not_chosen()
    {
        // 100 W would do with thinner wire than the 4 AWG to 1/0 AWG that the maker states for the terminals.
        var small = Auto.Replace("2 ohm: 400 W", "2 ohm: 100 W", StringComparison.Ordinal)
            .Replace("fuse: 40 A,", "fuse: 15 A, fits: 4 AWG to 1/0 AWG,", StringComparison.Ordinal);
        var result = Compile(small);
        Assert.Equal(WireSize.FromAwg(4), AutoSizer.Size(result.Spec).Wires["P1"]);
        Assert.DoesNotContain(result.Findings, f => f.Rule == "supply/terminal-too-small");
        Assert.Equal("the thinnest that its terminals take", AutoSizer.Size(result.Spec).Reasons["G1"]);
    }

    [Fact]
    public void Speaker_wire_that_says_auto_loses_no_tenth_of_the_power_and_carries_the_current()
    {
        var result = Compile(Examples.BassUpgrade.Replace(
            "wire: 12 AWG, length: 9 ft", "wire: auto, length: 9 ft", StringComparison.Ordinal));
        Assert.DoesNotContain(result.Findings, f => f.Rule is "load/wire-loss" or "load/wire-overloaded");
        Assert.Equal("load/wire-loss", AutoSizer.Size(result.Spec).Reasons["S1"]);
    }

    [Fact]
    public void What_no_size_mends_asks_for_no_copper()
    {
        // The last foot of 18 AWG alone loses more than may be lost; a thick P1 cannot win that back.
        var result = Compile("""
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              post: { is: bus bar, studs: 2, rating: 100 A }
              charger: { is: general load, current: 14 A, behaves: current, critical: true }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: post, wire: auto red, length: 6 ft, fuse: { rating: 20 A, at: 8 in } }
              P2: { from: post, to: charger.+, wire: 14 AWG red 105 C, length: 25 ft }
              G1: { from: charger.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """);
        Assert.Contains(result.Findings, f => f.Rule == "supply/drop");
        var choices = AutoSizer.Size(result.Spec);
        Assert.True(choices.Wires["P1"] < WireSize.FromAwg(8), $"{choices.Wires["P1"]}");
        Assert.EndsWith("; no size keeps supply/drop", choices.Reasons["P1"], StringComparison.Ordinal);
    }

    private static Compilation Compile(string text) => Compiler.Compile(Example.File(text), FilesInMemory.None);
}
