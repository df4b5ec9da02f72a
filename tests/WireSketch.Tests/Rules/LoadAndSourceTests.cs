using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Testing;

namespace WireSketch.Tests.Rules;

/// <summary>
/// Where rules of loads, sources and readings begin to speak. The figures follow from Ohm's law: R in series adds, 1/R in parallel adds,
/// P = V²/R.
/// </summary>
public sealed class LoadAndSourceTests
{
    /// <summary>Loads by hand: two coils of R are 2R in series and R/2 in parallel; a bridge's halves see half.</summary>
    [Theory]
    [InlineData("coils: 2 x 4 ohm", "parallel", "2 ohm", false)]
    [InlineData("coils: 2 x 4 ohm", "parallel", "2.1 ohm", true)]
    [InlineData("coils: 2 x 2 ohm", "parallel", "1 ohm", false)]
    [InlineData("coils: 2 x 2 ohm", "parallel", "1.1 ohm", true)]
    [InlineData("coils: 2 x 2 ohm", "series", "4 ohm", false)]
    [InlineData("coils: 4 x 4 ohm", "parallel", "1 ohm", false)]
    [InlineData("coils: 4 x 4 ohm", "series", "16 ohm", false)]
    [InlineData("coils: 4 x 4 ohm", "series", "17 ohm", true)]
    public void A_load_is_too_low_only_below_the_minimum(string coils, string hookup, string minimum, bool tooLow) =>
        Assert.Equal(tooLow, Rules($$"""
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 100 W }, minimum: {{minimum}} } } }
              sub: { is: subwoofer, {{coils}} }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: {{hookup}}, wire: 8 AWG, length: 3 ft }
            """).Contains("load/below-minimum"));

    /// <summary>9 V across 20 ohm is 4.05 W: above the half of 8 W and below it; of 10 W it is less than the half.</summary>
    [Theory]
    [InlineData("4 W", Severity.Error)]
    [InlineData("8 W", Severity.Warning)]
    [InlineData("10 W", null)]
    public void A_resistor_is_judged_by_the_square_of_the_volts_over_its_resistance(string handles, Severity? expected)
    {
        var findings = Compile($$"""
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } } }
              loads: { is: load resistor, channels: 2, across: radio.front, resistance: 20 ohm, handles: {{handles}} }
            """);
        Assert.Equal(expected, findings.FirstOrDefault(f => f.Rule == "source/resistor-watts")?.Severity);
        Assert.All(
            findings.Where(f => f.Rule == "source/resistor-watts"),
            f => Assert.Contains("4.05 W", f.Message, StringComparison.Ordinal));
    }

    /// <summary>A series capacitor of 12 µF before 4 ohm has its corner at 1 / 2πRC = 3316 Hz; one of 100 µF at 398 Hz.</summary>
    [Theory]
    [InlineData("12 uF", false)]
    [InlineData("100 uF", true)]
    public void A_capacitor_ahead_of_a_tweeter_is_a_high_pass(string capacitor, bool missing) => Assert.Equal(missing, Rules($$"""
        gear:
          amp: { is: amplifier, origin: existing, channels: { front: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
          filter: { is: passive crossover, outputs: { high: { parts: [ { capacitor: {{capacitor}} } ] } } }
          tweeter: { is: speaker, band: tweeter, coils: 4 ohm, handles: 60 W }
        runs:
          S1: { from: amp.front, to: filter.in, wire: 16 AWG, length: 3 ft }
          S2: { from: filter.high, to: tweeter, wire: 16 AWG, length: 3 ft }
        """).Contains("load/no-high-pass"));

    /// <summary>
    /// 60 ohm is asked for: 66 ohm still does, as resistors come within a tenth; 75 ohm does not. Two of 120 ohm in parallel are 60 ohm.
    /// </summary>
    [Theory]
    [InlineData("60 ohm", false)]
    [InlineData("66 ohm", false)]
    [InlineData("75 ohm", true)]
    [InlineData("25 ohm", false)]
    public void A_source_mutes_above_the_load_it_wants(string resistance, bool mutes) => Assert.Equal(mutes, Rules($$"""
        gear:
          radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 5 V } }, behavior: { mutes-without-load: 60 ohm } }
          adapter: { is: level adapter, channels: 2, output: 4 V }
          amp: { is: amplifier, origin: existing, channels: { left: { power: { 4 ohm: 50 W } }, right: { power: { 4 ohm: 50 W } } } }
          loads: { is: load resistor, channels: 2, across: radio.front, resistance: {{resistance}}, handles: 20 W }
        runs:
          T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in }
          L1: { from: adapter.out, to: amp.in, wire: line pair, length: 8 ft }
        """).Contains("source/needs-load"));

    /// <summary>
    /// Straight over the logarithm of frequency: from 0 dB in the band of 125 Hz to -12 dB in that of 63 Hz it is -6 dB between their
    /// exact middles (IEC 61260-1), 1000 · 10^(-1.05) = 89.1 Hz.
    /// </summary>
    [Fact]
    public void The_corner_of_a_source_lies_between_its_bands()
    {
        var finding = Compile("""
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2 } } }
            response:
              - { at: radio.front, volume: 20, levels: { 63 Hz: -12 dB, 125 Hz: 0 dB, 500 Hz: 0 dB, 1000 Hz: 0 dB } }
            """).Single(f => f.Rule == "source/band-limited");
        Assert.Contains("below 89 Hz", finding.Message, StringComparison.Ordinal);
    }

    /// <summary>
    /// A lamp of 55 W at 12 V has 2.62 ohm; with no loss worth the name in 2 AWG it sees the running volts less a few hundredths.
    /// </summary>
    [Theory]
    [InlineData("14.1 V", false)]
    [InlineData("13.2 V", true)]
    public void A_reading_that_is_off_by_a_volt_is_told(string reads, bool differs) => Assert.Equal(differs, Rules($$"""
        job: { title: Lamp, vehicle: { description: Marlow Brindle, running: 14.2 V } }
        gear:
          battery: { is: battery, origin: factory, capacity: 70 Ah }
          beacon: { is: lamp, power: 55 W }
          bolt: { is: chassis point, surface: bare metal }
        readings:
          - { at: beacon.+, reads: {{reads}} }
        runs:
          P1: { from: battery.+, to: beacon.+, wire: 2 AWG red, length: 3 ft, fuse: { rating: 10 A, at: 6 in } }
          G1: { from: beacon.-, to: bolt, wire: 2 AWG black, length: 10 in }
        """).Contains("spec/reading-differs"));

    [Fact]
    public void A_reading_of_something_that_was_not_computed_is_not_passed_over() => Assert.Contains(
        Compile("""
            gear:
              battery: { is: battery, origin: factory }
            readings:
              - { at: battery, reads: 4 ohm }
            """),
        f =>
            f.Rule == "spec/reading-differs"
                && f.Severity == Severity.Advice
                && f.Message.Contains("cannot be compared", StringComparison.Ordinal));

    private static string[] Rules(string fragment) => [.. Compile(fragment).Select(f => f.Rule)];

    private static Finding[] Compile(string fragment)
    {
        var compiled = Compiler.Compile(Example.File(fragment), FilesInMemory.None);
        Assert.True(
            compiled.Install is not null,
            string.Create(CultureInfo.InvariantCulture, $"{string.Join("; ", compiled.Findings.Select(f => f.Message))}"));
        return [.. compiled.Findings];
    }
}
