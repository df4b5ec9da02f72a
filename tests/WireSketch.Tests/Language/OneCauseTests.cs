using WireSketch.Diagnostics;
using WireSketch.Testing;
using WireSketch.Text;

namespace WireSketch.Tests.Language;

/// <summary>A slip in a spec that is otherwise right is told once, at its place, with what to type.</summary>
public sealed class OneCauseTests
{
    [Theory]
    [InlineData("channels:\n", "chanels:\n", "spec/unknown-key", "write channels")]
    [InlineData("outputs:\n", "outputz:\n", "spec/unknown-key", "write outputs")]
    [InlineData("coils: 2 x 4 ohm", "coils: -1 x 4 ohm", "spec/value", "such as 2 x 4 ohm")]
    [InlineData("coils: 2 x 4 ohm", "coils: 1000000 x 4 ohm", "spec/value", "such as 2 x 4 ohm")]
    [InlineData("coils: 2 x 4 ohm", "coils: 1.5 x 4 ohm", "spec/value", "such as 2 x 4 ohm")]
    [InlineData("at: 12 in", "at: -1 in", "spec/value", null)]
    [InlineData("hookup: parallel", "hookup: delta", "spec/value", "for anything else write a map")]
    [InlineData("length: 17 ft", "length: 15,5 ft", "spec/syntax", "write 15.5 ft")]
    [InlineData("length: 17 ft", "length: 1,000 ft", "spec/syntax", "write 1000 ft, or 1.000 ft if the comma parts the decimals")]
    [InlineData("length: 17 ft", "length: '15,5 ft'", "spec/value", "write 15.5 ft")]
    [InlineData("length: 17 ft", "length: 2e9 ft", "spec/unit", "such as 17 ft")]
    [InlineData("length: 17 ft", "length: 15 V", "spec/unit", "write a number with its unit, such as 17 ft")]
    [InlineData("length: 17 ft", "length: NaN ft", "spec/value", "write a number with its unit, such as 17 ft")]
    [InlineData("length: 17 ft", "length: 15 ft 14 in", "spec/unit", "such as 17 ft")]
    [InlineData("rating: 60 A", "rating: 60a", "spec/unit", "write 60 A")]
    [InlineData("wire: 4 AWG red", "wire: 4 gauge red", "spec/value", null)]
    public void A_slip_is_told_once(string right, string wrong, string rule, string? help)
    {
        var finding = Assert.Single(Findings(Changed(right, wrong)));

        Assert.Equal(rule, finding.Rule);
        Assert.Contains(help ?? "", finding.Help ?? "", StringComparison.Ordinal);
    }

    [Fact]
    public void An_id_with_a_dot_is_told_once_however_many_runs_name_it()
    {
        var finding = Assert.Single(Findings(Examples.BassUpgrade.Replace("  amp:\n", "  a.mp:\n", StringComparison.Ordinal)
            .Replace("amp.", "a.mp.", StringComparison.Ordinal)));

        Assert.Equal(("spec/id", "a.mp"), (finding.Rule, finding.At.Words));
    }

    [Theory]
    [InlineData("gear:\n", "spec/value", "gear")]
    [InlineData("gear: {}\n", "spec/missing", "P1")]
    [InlineData("", "spec/missing", "P1")]
    public void Without_gear_there_is_one_finding_and_not_one_for_every_end_of_a_run(string gear, string rule, string at)
    {
        var text = Examples.BassUpgrade.ReplaceLineEndings("\n");
        var start = text.IndexOf("gear:\n", StringComparison.Ordinal);
        var finding = Assert.Single(Findings(string.Concat(
            text.AsSpan(0, start),
            gear,
            text.AsSpan(text.IndexOf("runs:\n", StringComparison.Ordinal)))));

        Assert.Equal((rule, at), (finding.Rule, finding.At.Words));
    }

    [Fact]
    public void A_device_without_a_value_is_told_once()
    {
        var finding = Assert.Single(Findings(Changed(
            "  seat-bolt: { is: chassis point, zone: cabin, surface: bare metal }",
            "  seat-bolt:")));

        Assert.Equal(("spec/value", "seat-bolt"), (finding.Rule, finding.At.Words));
    }

    [Fact]
    public void An_empty_file_is_one_finding() =>
        Assert.Equal("there is nothing in the file", Assert.Single(Findings("# to be written\n")).Message);

    /// <summary>What only looks like the same cause is still told: the terminal of another device.</summary>
    [Fact]
    public void A_slip_in_one_device_hides_none_in_another() =>
        Assert.Equal(
            ["spec/unknown-key", "spec/reference"],
            Findings(Changed("channels:\n", "chanels:\n").Replace(
                "adapter.out", "adapter.outt", StringComparison.Ordinal)).Select(f => f.Rule));

    [Theory]
    [InlineData("readings:\n  - { at: nothing, reads: 12 V }", "nothing", null)]
    [InlineData("readings:\n  - { at: amp.subb, reads: 2 ohm }", "amp.subb", "amp.sub?")]
    [InlineData("readings:\n  - { at: P11, reads: 20 A }", "P11", "write P1,")]
    [InlineData("readings:\n  - { at: amp.+, against: bttery.-, reads: 12 V }", "bttery.-", "battery.-?")]
    [InlineData("response:\n  - { at: radio.frunt, volume: 20, levels: { 63 Hz: -3 dB, 1000 Hz: 0 dB } }", "radio.frunt", "radio.front?")]
    [InlineData("paths:\n  left: { from: engine bey, length: 9 ft }", "engine bey", "write engine bay,")]
    [InlineData("paths:\n  left: { to: moon, length: 9 ft }", "moon", "cabin")]
    public void A_name_that_names_nothing_is_an_error_wherever_it_stands(string words, string at, string? help)
    {
        var finding = Assert.Single(Findings(Examples.BassUpgrade + "\n" + words + "\n"));

        Assert.Equal(("spec/reference", Severity.Error, at), (finding.Rule, finding.Severity, finding.At.Words));
        Assert.Contains(help ?? "", finding.Help, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("readings:\n  - { at: P1, reads: 36 A }\n  - { at: amp.sub, reads: 2.1 ohm }\n  - { at: battery, reads: 36 A }\n  - { "
        + "at: P1.fuse.in, reads: 14 V }\n  - { at: amp.+, against: battery.-, reads: 14 V }")]
    [InlineData("response:\n  - { at: radio.front, volume: 20, levels: { 63 Hz: -3 dB, 1000 Hz: 0 dB } }\n  - { at: radio, volume: 9, "
        + "levels: { 63 Hz: -3 dB, 1000 Hz: 0 dB } }")]
    [InlineData("paths:\n  left: { from: engine bay, to: under the passenger seat, length: 9 ft }\n  right: { from: Engine bay, to: "
        + "left sill, length: 9 ft }\n  back: { from: left sill, to: rear, length: 9 ft }")]
    public void Names_of_runs_devices_terminals_zones_and_places_are_understood(string words) =>
        Assert.DoesNotContain(Findings(Examples.BassUpgrade + "\n" + words + "\n"), f => f.Severity == Severity.Error);

    [Theory]
    [InlineData("rating: 60 A", "rating: 60 amps")]
    [InlineData("wire: 4 AWG red", "wire: 4 AWG RED")]
    [InlineData("length: 17 ft", "length: 16 ft 12/2 in")]
    public void What_people_write_as_well_is_understood(string usual, string also) =>
        Assert.DoesNotContain(Findings(Changed(usual, also)), f => f.Severity == Severity.Error);

    private static string Changed(string right, string wrong)
    {
        var text = Examples.BassUpgrade.ReplaceLineEndings("\n");
        Assert.Contains(right, text, StringComparison.Ordinal);
        var at = text.IndexOf(right, StringComparison.Ordinal);
        return text.Remove(at, right.Length).Insert(at, wrong);
    }

    private static IEnumerable<Finding> Findings(string text) =>
        Compiler.Compile(new SourceFile("a.wsk.yaml", text), FilesInMemory.None).Findings.Where(f => f.Severity > Severity.Advice);
}
