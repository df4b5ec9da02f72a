using WireSketch.Quantities;
using WireSketch.Sizing;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Sizing;

public sealed class AutoSizerTests
{
    private static readonly string Auto = Examples.BassUpgrade.Replace("wire: 4 AWG red", "wire: auto red", StringComparison.Ordinal)
        .Replace("rating: 60 A", "rating: auto", StringComparison.Ordinal).Replace("wire: 4 AWG black", "wire: auto black", StringComparison.Ordinal);

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
        var reason = choices.Reasons["P1 wire"];
        var thinner = SizeLadder.For(spec).Where(s => s < choices.Wires["P1"]).Max();
        var pinned = Auto.Replace("wire: auto red", $"wire: {thinner} red", StringComparison.Ordinal);
        Assert.Contains(reason, Compiler.Compile(Example.File(pinned), FilesInMemory.None).Findings.Select(f => f.Rule));
    }

    [Fact]
    public void A_fuse_that_says_auto_carries_the_load_with_a_tenth_to_spare()
    {
        // 395 W at 80 %, on the 13.7 V that 6 AWG leaves of 14.1 V, are 36.1 A; over 0.9 that is 40.1 A: 40 A is a little short, 50 A is the next made (ISO 8820-3).
        var choices = AutoSizer.Size(Compiler.Compile(Example.File(Auto), FilesInMemory.None).Spec);
        Assert.Equal(new Amps(50), choices.Fuses["P1"]);
    }

    [Fact]
    public void The_system_of_sizes_follows_the_first_wire_unless_settings_name_one()
    {
        Assert.Equal("18 AWG", SizeLadder.For(Compiler.Compile(Example.File(Auto), FilesInMemory.None).Spec)[0].ToString());
        var metric = Compiler.Compile(Example.File(Auto + "settings: { sizes: mm2 }\n"), FilesInMemory.None).Spec;
        Assert.Equal("1 mm2", SizeLadder.For(metric)[0].ToString());
    }
}
