using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>One mistake in a whole install gives one finding, that of its cause, and none of its consequences.</summary>
public sealed class OneCauseTests
{
    private const string Sub =
        "  sub: { is: subwoofer, zone: rear, coils: 2 x 4 ohm, handles: 400 W, enclosure: { type: vented, tuned: 34 Hz } }";

    private const string S1 = "  S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }";

    private const string L1 = "  L1: { from: adapter.out, to: amp.in, wire: line pair, length: 12 ft }";

    private const string T1 = "  T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }";

    [Fact]
    public void The_install_itself_is_clean() => Assert.Empty(Ids(Examples.BassUpgrade));

    [Theory]
    [InlineData("coils: 2 x 4 ohm", "coils: 2 x 2 ohm", "load/below-minimum")]
    [InlineData("handles: 400 W", "handles: 100 W", "load/coil-overpowered")]
    [InlineData("maximum: 9 V", "maximum: 9 V, lowest: 90 Hz", "signal/band-missing")]
    [InlineData("output: 4.5 V", "output: 0.05 V", "signal/level-low")]
    [InlineData("output: 4.5 V", "output: 8 V", "signal/level-high")]
    [InlineData("passes: [dc offset, load]", "passes: [load]", "turn-on/not-carried")]
    [InlineData("wake: dc offset", "wake: remote", "turn-on/mode")]
    [InlineData("wake: dc offset", "wake: signal", "turn-on/mode")]
    [InlineData("wakes-on: [remote, dc offset]", "wakes-on: [remote]", "turn-on/mode")]
    [InlineData("input-load: on", "input-load: off", "source/needs-load")]
    [InlineData(L1, "", "signal/unconnected")]
    [InlineData(T1, "", "signal/unconnected")]
    [InlineData(S1, "  S1: { from: amp.sub, to: sub.coil.1, wire: 12 AWG, length: 9 ft }", "load/coil-open load/coil-overpowered")]
    [InlineData(S1, S1 + "\n  S2: { from: amp.sub.+, to: amp.sub.-, wire: 12 AWG, length: 2 in }", "load/shorted")]
    [InlineData(S1, S1 + "\n  S2: { from: sub.coil.1.-, to: seat-bolt, wire: 12 AWG, length: 2 in }", "load/output-grounded")]
    [InlineData(S1, S1
        + "\n  R1: { from: battery.+, to: amp.remote, wire: 18 AWG, length: 9 ft, fuse: { rating: 1 A, at: 4 in } "
        + "}", "route/bare-in-engine-bay route/no-grommet")]
    [InlineData("from: battery.+, to: amp.+", "from: battery.-, to: amp.+", "supply/reversed")]
    [InlineData(Sub, Sub + "\n  spare: { is: subwoofer, zone: rear }", "spec/unconnected")]
    public void A_mistake_is_told_once(string was, string becomes, string expected)
    {
        Assert.Contains(was, Examples.BassUpgrade, StringComparison.Ordinal);
        Assert.Equal(expected, string.Join(' ', Ids(Examples.BassUpgrade.Replace(was, becomes, StringComparison.Ordinal))));
    }

    [Fact]
    public void What_is_connected_to_nothing_at_all_is_told_once() =>
        Assert.Equal(
            ["spec/unconnected"],
            Ids(Examples.BassUpgrade.Replace(
                Sub,
                Sub + "\n  amp2: { is: amplifier, wakes-on: [remote], channels: { sub: { power: { 4 ohm: 50 W } } } }",
                StringComparison.Ordinal)));

    [Fact]
    public void A_hookup_that_is_none_is_not_told_as_missing_too() =>
        Assert.Equal(
            ["spec/value"],
            Compiler.Compile(
                Example.File(Examples.BassUpgrade.Replace("hookup: parallel", "hookup: delta", StringComparison.Ordinal)),
                FilesInMemory.None)
                .Findings.Where(f => f.Severity > Severity.Advice).Select(f => f.Rule));

    private static string[] Ids(string text)
    {
        var compiled = Compiler.Compile(new("bass-upgrade.wsk.yaml", text), FilesInMemory.None);
        Assert.True(compiled.Install is not null, string.Join("; ", compiled.Findings.Select(f => f.Message)));
        return [.. compiled.Findings.Where(f => f.Severity > Severity.Advice).Select(f => f.Rule).Order(StringComparer.Ordinal)];
    }
}
