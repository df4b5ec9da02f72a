using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Sizing;
using WireSketch.Testing;

namespace WireSketch.Tests.Sizing;

public sealed class AutoSizerTests
{
    private static readonly string Auto = Examples.BassUpgrade.Replace("wire: 4 AWG red", "wire: auto red", StringComparison.Ordinal)
        .Replace("rating: 60 A", "rating: auto", StringComparison.Ordinal)
        .Replace("wire: 4 AWG black", "wire: auto black", StringComparison.Ordinal);

    [Fact]
    public void Auto_sizes_break_no_rule()
    {
        var result = Compiler.Compile(Example.File(Auto), FilesInMemory.None);
        Assert.Empty(result.Findings.Where(f => f.Severity > Severity.Advice).Select(f => $"{f.Rule}: {f.Message}"));
    }

    [Fact]
    public void One_size_less_breaks_the_rule_that_decided()
    {
        var spec = Compiler.Compile(Example.File(Auto), FilesInMemory.None).Spec;
        var choices = AutoSizer.Size(spec);
        var reason = choices.Reasons["P1"];
        var thinner = SizeLadder.For(spec).Where(s => s < choices.Wires["P1"]).Max();
        var pinned = Auto.Replace("wire: auto red", $"wire: {thinner} red", StringComparison.Ordinal);
        Assert.Contains(reason, Compiler.Compile(Example.File(pinned), FilesInMemory.None).Findings.Select(f => f.Rule));
    }

    [Fact]
    public void A_fuse_that_says_auto_carries_the_load_with_a_tenth_to_spare()
    {
        // 395 W at 80 %, on the 13.7 V that 6 AWG leaves of 14.1 V, are 36.1 A; over 0.9 that is 40.1 A: 40 A is a little short, 50 A is
        // the next made (ISO 8820-3).
        var choices = AutoSizer.Size(Compiler.Compile(Example.File(Auto), FilesInMemory.None).Spec);
        Assert.Equal(new Amps(50), choices.Fuses["P1"]);
    }

    // 8 A running over 0.9 are 8.9 A: 10 A would do. 40 A at the start are 400 % of that; a large blade stays whole for 0.75 s at 135 %
    // (type sheet that refers to ISO 8820-3): 30 A, of which 40 A are 133 %.
    [Fact]
    public void A_fuse_that_says_auto_outlasts_the_start_of_its_load()
    {
        var result = Compiler.Compile(Example.File("""
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 8 A, surge: 40 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: auto red, length: 8 ft, fuse: { rating: auto, style: blade, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: auto black, length: 12 in }
            """), FilesInMemory.None);
        Assert.Equal(new Amps(30), result.Install!.Sizes.Fuses["P1"]);
        Assert.DoesNotContain(result.Findings, f => f.Rule is "supply/fuse-below-surge" or "supply/fuse-above-wire");
    }

    [Fact]
    public void The_system_of_sizes_follows_the_first_wire_unless_settings_name_one()
    {
        Assert.Equal("18 AWG", SizeLadder.For(Compiler.Compile(Example.File(Auto), FilesInMemory.None).Spec)[0].ToString());
        var metric = Compiler.Compile(Example.File(Auto + "settings: { sizes: mm2 }\n"), FilesInMemory.None).Spec;
        Assert.Equal("1 mm2", SizeLadder.For(metric)[0].ToString());
    }
}
