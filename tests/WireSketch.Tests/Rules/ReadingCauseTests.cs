using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>
/// What a meter would show is computed here by Ohm's law from the plan as it is and one added resistance: a lamp of 55 W at 12 V has
/// 2.618 ohm, and with r more in its loop it gets E · R / (R + w + r), w being the loop's own resistance.
/// </summary>
public sealed class ReadingCauseTests
{
    private const double Lamp = 12.0 * 12 / 55;

    private const string Plan = """
        gear:
          battery: { is: battery, origin: factory, capacity: 70 Ah }
          fuses: { is: fuse block, outputs: 2, style: blade, fuses: { 1: 10 A, 2: 10 A } }
          left: { is: lamp, power: 55 W }
          right: { is: lamp, power: 55 W }
          bolt: { is: chassis point, surface: bare metal }
        runs:
          P1: { from: battery.+, to: fuses.in, wire: 8 AWG red 105 C, length: 9 ft, fuse: { rating: 40 A, at: 6 in } }
          P2: { from: fuses.out.1, to: left.+, wire: 12 AWG red, length: 6 ft }
          P3: { from: fuses.out.2, to: right.+, wire: 12 AWG red, length: 6 ft }
          G1: { from: left.-, to: bolt, wire: 12 AWG black, length: 12 in }
          G2: { from: right.-, to: bolt, wire: 12 AWG black, length: 12 in }

        """;

    [Fact]
    public void A_bad_contact_in_one_lamps_way_is_found_and_measured()
    {
        var (source, own) = Loop();
        var found = Differ(
            ("left.+", Volts(source * Lamp / (Lamp + own + 0.3)), null),
            ("right.+", Volts(source * Lamp / (Lamp + own)), null));
        var finding = Assert.Single(found);
        Assert.Contains("P2 or G1", finding.Help!, StringComparison.Ordinal);
        Assert.InRange(Ohms(finding.Help!), 0.25, 0.33);
    }

    [Fact]
    public void A_lead_on_the_body_tells_the_supply_from_the_ground()
    {
        var (source, own) = Loop();
        var amps = source / (Lamp + own + 0.3);
        var plus = (amps * Lamp) + (amps * 0.3) + Ground();
        var finding = Assert.Single(Differ(
            ("left.+", Volts(amps * Lamp), null),
            ("left.+", Volts(plus), "bolt"),
            ("right.+", Volts(source * Lamp / (Lamp + own)), null)));
        Assert.Contains("more in G1 would explain it", finding.Help!, StringComparison.Ordinal);
    }

    [Fact]
    public void What_both_lamps_share_explains_both_and_is_told_once()
    {
        var (source, own) = Loop();
        var reads = Volts(source * Lamp / (Lamp + own + (2 * 0.1)));
        var finding = Assert.Single(Differ(("left.+", reads, null), ("right.+", reads, null)));
        Assert.Contains("more in P1 would explain it", finding.Help!, StringComparison.Ordinal);
        Assert.InRange(Ohms(finding.Help!), 0.08, 0.115);
        Assert.Contains("right.+", Assert.Single(finding.Notes).Message, StringComparison.Ordinal);
    }

    [Fact]
    public void More_volts_than_computed_are_no_bad_contact() =>
        Assert.DoesNotContain("would explain", Assert.Single(Differ(("left.+", "15.5 V", null))).Help!, StringComparison.Ordinal);

    /// <summary>Two coils of 4 ohm in parallel are 2 ohm; one open leaves 4 ohm, both in series would be 8 ohm.</summary>
    [Theory]
    [InlineData("3.4 ohm", "an open coil would read so: sub.coil.1 or sub.coil.2")]
    [InlineData("0.05 ohm", "a shorted coil would read so: sub.coil.1 or sub.coil.2")]
    [InlineData("7.5 ohm", null)]
    public void A_broken_coil_is_told_by_the_ohms_that_are_left(string reads, string? says)
    {
        var finding = Compile($$"""
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 2 ohm: 400 W }, minimum: 2 ohm } }, settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            readings:
              - { at: amp.sub, reads: {{reads}} }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 6 ft }
            """).Single(f => f.Rule == "spec/reading-differs");
        Assert.Equal(says is null, finding.Help!.StartsWith("measure once more", StringComparison.Ordinal));
        Assert.Contains(says ?? "", finding.Help!, StringComparison.Ordinal);
    }

    /// <summary>Volts that drive one lamp's loop, and the resistance of that loop, as the plan has them.</summary>
    private static (double Source, double Own) Loop()
    {
        var state = State();
        var lamp = state.Loads.Single(l => l.Path.Gear.Id == "left");
        var source = lamp.Between.Value + lamp.SupplyDrop.Value + lamp.ReturnDrop.Value;
        return (source, Lamp * ((source / lamp.Between.Value) - 1));
    }

    private static double Ground() => State().Loads.Single(l => l.Path.Gear.Id == "left").ReturnDrop.Value * 0.3;

    private static StateResult State() =>
        Compiler.Compile(Example.File(Plan), FilesInMemory.None).Install!.Answers.State(SystemState.FullOutput);

    private static Finding[] Differ(params (string At, string Reads, string? Against)[] readings) =>
        [
            .. Compile(Plan
                + "readings:\n"
                + string.Concat(readings.Select(r =>
                    $"  - {{ at: {r.At}, reads: {r.Reads}{(r.Against is null ? "" : $", against: {r.Against}")} }}\n"))).Where(
                f => f.Rule == "spec/reading-differs")
        ];

    private static Finding[] Compile(string text)
    {
        var compiled = Compiler.Compile(Example.File(text), FilesInMemory.None);
        Assert.NotNull(compiled.Install);
        return [.. compiled.Findings];
    }

    private static string Volts(double volts) => volts.ToString("F3", CultureInfo.InvariantCulture) + " V";

    private static double Ohms(string help)
    {
        var words = help.Split(' ');
        var at = Array.FindIndex(words, w => w is "ohm" or "mohm");
        return double.Parse(words[at - 1], CultureInfo.InvariantCulture) * (words[at] == "mohm" ? 1e-3 : 1);
    }
}
