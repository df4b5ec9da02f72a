using WireSketch.Documents.SettingUp;
using WireSketch.Quantities;

namespace WireSketch.Tests.Documents.SettingUp;

public sealed class ChannelSetupTests
{
    private const string Runs = """
        P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 17 ft, fuse: { rating: 60 A, at: 12 in } }
        G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 14 in }
        R1: { from: switched, to: amp.remote, wire: 18 AWG blue, length: 10 ft }
        S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
        """;

    // U = √(P·Z): 400 W in 2 ohm are 28.28 V (Ohm's law); the wire's 0.03 ohm moves it by less than 2 %.
    [Fact]
    public void The_target_is_the_root_of_power_times_load()
    {
        var setup = Assert.Single(ChannelSetup.From(Built.Of(Runs).Install));
        Assert.Equal("amp.sub", setup.Channel);
        Assert.InRange(setup.Target!.Value.Value, 28.28 * 0.98, 28.28 * 1.02);
        Assert.Equal(50, setup.Tone.Value);
    }

    // -20 dB are a tenth of the volts; -6.0206 dB a half (definition of the decibel for field quantities, ISO 80000-3).
    [Fact]
    public void A_tone_recorded_lower_gives_fewer_volts()
    {
        var setup = Assert.Single(ChannelSetup.From(Built.Of(Runs).Install));
        Assert.Equal(setup.Target!.Value.Value / 10, setup.TargetFor(new Decibels(-20))!.Value.Value, 9);
        Assert.Equal(setup.Target.Value.Value / 2, setup.TargetFor(new Decibels(-6.0206))!.Value.Value, 4);
    }

    // A third of an octave below 40 Hz is 40/2^(1/3) = 31.7 Hz.
    [Fact]
    public void Filters_begin_where_practice_has_them_unless_the_spec_names_them()
    {
        var setup = Assert.Single(ChannelSetup.From(Built.Of(Runs).Install));
        Assert.Equal(("–", "80 Hz to begin with", "32 Hz to begin with"), (setup.HighPass, setup.LowPass, setup.Subsonic));
        var written = ChannelSetup.From(Built.Shipped("one-amplifier").Install).Single();
        Assert.Equal(("80 Hz", "28 Hz"), (written.LowPass, written.Subsonic));
    }

    /// <summary>
    /// A boost of 6 dB lifts what the tone gives by 10^(6/20) = 1.995 (definition of the decibel, ISO 80000-3): with the boost off, the
    /// target is lower by as much.
    /// </summary>
    [Fact]
    public void A_boost_lowers_the_target()
    {
        var plain = Assert.Single(ChannelSetup.From(Built.Of(Runs).Install));
        var boosted = Assert.Single(ChannelSetup.From(Built.From(Compiler.Compile(
            Testing.Example.File(Built.Of(Runs).Result.File.Text
                .Replace("settings: { wake: remote }", "settings: { wake: remote, boost: 6 dB at 45 Hz }", StringComparison.Ordinal)),
            Testing.FilesInMemory.None)).Install));
        Assert.Equal(1.99526, plain.Target!.Value.Value / boosted.Target!.Value.Value, 5);
        Assert.Contains("6 dB lower", string.Join(' ', boosted.Remarks), StringComparison.Ordinal);
    }
}
