using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Testing;
using WireSketch.Topology;

namespace WireSketch.Tests.Electrical;

public sealed class ChannelTests
{
    private const string Gear = """
        gear:
          amp:
            is: amplifier
            channels:
              rl: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm, bridges-with: rr }
              rr: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm }
          sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 200 W }
          left: { is: speaker, coils: 4 ohm, handles: 40 W }
          right: { is: speaker, coils: 8 ohm }
          bolt: { is: chassis point, surface: bare metal }

        """;

    [Theory]
    [InlineData("parallel", 2)]
    [InlineData("series", 8)]
    public void The_load_is_made_by_the_hookup(string hookup, double ohms)
    {
        var channel = Assert.Single(Solve($"  S1: {{ from: amp.rl, to: sub.coils, hookup: {hookup}, wire: 12 AWG, length: 9 ft }}"));
        Assert.Equal(LoadFault.None, channel.Fault);
        Assert.Equal(ohms, channel.Nominal!.Value.Value, 1e-9);
        Assert.True(channel.Loaded > channel.Nominal);
        Assert.Equal(2, channel.Minimum!.Value.Value);
        Assert.All(channel.Coils, c => Assert.Equal(0.5, c.ShareOfPower.Value, 1e-3));
        Assert.Equal(100, channel.Coils[0].Handles!.Value.Value);
    }

    [Fact]
    public void Each_half_of_a_bridge_sees_half_the_load()
    {
        // Worked examples PW-09 to PW-11.
        var channel = Assert.Single(Solve("  S1: { from: [amp.rl.+, amp.rr.-], to: left, wire: 12 AWG, length: 9 ft }"));
        Assert.Equal(("rl", "rr"), (channel.Channel, channel.BridgedWith));
        Assert.Equal(4, channel.Nominal!.Value.Value, 1e-9);
        Assert.Equal(2, channel.PerHalf!.Value.Value, 1e-9);
        Assert.Equal(4, channel.Minimum!.Value.Value);

        // Twice the half's power at half the load, in the 4 ohm and the wire before it.
        var volts = Math.Sqrt(220 * 4);
        Assert.InRange(channel.Volts!.Value.Value, volts, volts * 1.03);
        Assert.InRange(channel.Power!.Value.Value, 205, 220);
    }

    [Fact]
    public void The_gain_is_set_for_what_the_speaker_takes()
    {
        var channel = Assert.Single(Solve("  S1: { from: amp.rl, to: left, wire: 12 AWG, length: 9 ft }"));
        var coil = Assert.Single(channel.Coils);
        Assert.True(coil.Power!.Value.Value > 40);

        // At that voltage the coil has just its 40 W: its own volts are √(40 W · 4 ohm).
        var atCoil = channel.TargetVolts!.Value.Value * Math.Sqrt(coil.Power!.Value.Value * 4) / channel.Volts!.Value.Value;
        Assert.Equal(Math.Sqrt(40 * 4), atCoil, 1e-9);
    }

    [Fact]
    public void Wire_takes_from_the_level()
    {
        var channel = Assert.Single(Solve("  S1: { from: amp.rl, to: left, wire: 18 AWG, length: 20 ft }"));
        var share = channel.Nominal!.Value / channel.Loaded!.Value;
        Assert.Equal(-20 * Math.Log10(share), channel.WireLoss.Value, 1e-9);
    }

    [Fact]
    public void Unequal_speakers_share_as_their_conductances()
    {
        // Worked example LS-14, with hardly any wire.
        var channel = Assert.Single(Solve("""
              S1: { from: amp.rl, to: left, wire: 4 AWG, length: 1 in }
              S2: { from: amp.rl, to: right, wire: 4 AWG, length: 1 in }
            """));
        Assert.Equal(8.0 / 3, channel.Nominal!.Value.Value, 1e-9);
        Assert.Equal(1.0 / 3, channel.Coils.Single(c => c.Speaker.Id == "right").ShareOfPower.Value, 1e-3);
    }

    [Fact]
    public void A_coil_the_wrong_way_round_moves_against_the_signal()
    {
        var channel = Assert.Single(Solve("""
              S1: { from: [amp.rl.+, amp.rl.-], to: [sub.coil.1.+, sub.coil.1.-], wire: 12 AWG, length: 3 ft }
              S2: { from: [amp.rl.+, amp.rl.-], to: [sub.coil.2.-, sub.coil.2.+], wire: 12 AWG, length: 3 ft }
            """));
        Assert.Equal([false, true], channel.Coils.Select(c => c.IsReversed));
        Assert.Equal(2, channel.Nominal!.Value.Value, 1e-9);
    }

    [Fact]
    public void A_coil_with_one_end_free_is_open()
    {
        var channel = Assert.Single(Solve("  S1: { from: amp.rl.+, to: left.+, wire: 12 AWG, length: 3 ft }"));
        Assert.Equal(LoadFault.Open, channel.Fault);
        Assert.True(Assert.Single(channel.Coils).IsOpen);
        Assert.Null(channel.Nominal);
    }

    [Theory]
    [InlineData("  S1: { from: amp.rl, to: left, wire: 12 AWG, length: 3 ft }\n  S2: { from: amp.rl.+, to: amp.rl.-, wire: 12 AWG, "
        + "length: 3 ft }", LoadFault.Shorted)]
    [InlineData("  S1: { from: amp.rl, to: left, wire: 12 AWG, length: 3 ft }\n  S2: { from: amp.rl.-, to: bolt, wire: 12 AWG, length: "
        + "3 ft }", LoadFault.Grounded)]
    public void What_is_wrong_with_a_load_as_a_whole_is_told(string runs, LoadFault fault) =>
        Assert.Equal(fault, Assert.Single(Solve(runs)).Fault);

    [Fact]
    public void Two_outputs_on_one_speaker_are_tied()
    {
        var channels = Solve(
            "  S1: { from: amp.rl, to: left, wire: 12 AWG, length: 3 ft }\n  S2: { from: amp.rr, to: left, wire: 12 AWG, length: 3 ft }");
        Assert.Equal(2, channels.Count);
        Assert.All(channels, c => Assert.Equal(LoadFault.TiedToOutput, c.Fault));
    }

    [Fact]
    public void A_crossover_of_constant_resistance_shows_it_at_every_frequency()
    {
        // Worked example AC-17: L = R/w and C = 1/(wR), both drivers 4 ohm, corner 2000 Hz.
        var channel = Assert.Single(Solve(
            "  S1: { from: amp.rl, to: x.in, wire: 4 AWG, length: 1 in }\n  S2: { from: x.low, to: left, wire: 4 AWG, length: 1 in }\n  "
                + "S3: { from: x.high, to: tweeter, wire: 4 AWG, length: 1 in }",
            "  tweeter: { is: speaker, coils: 4 ohm }\n  x: { is: passive crossover, outputs: { low: { parts: [{ inductor: "
                + "0.3183098861838 mH }] }, high: { parts: [{ capacitor: 19.8943678865 uF }] } } }\n"));
        Assert.Equal(4, channel.Nominal!.Value.Value, 1e-6);
        Assert.Equal(LoadFault.None, channel.Fault);
        Assert.DoesNotContain(channel.Coils, c => c.IsReversed || c.IsOpen);
    }

    [Fact]
    public void Bands_without_components_show_one_driver_at_a_time()
    {
        var channel = Assert.Single(Solve(
            "  S1: { from: amp.rl, to: x.in, wire: 4 AWG, length: 1 in }\n  S2: { from: x.low, to: left, wire: 4 AWG, length: 1 in }\n  "
                + "S3: { from: x.high, to: right, wire: 4 AWG, length: 1 in }",
            "  x: { is: passive crossover, outputs: { low: { low-pass: 2500 Hz }, high: { high-pass: 2600 Hz } } }\n"));
        Assert.Equal(4, channel.Nominal!.Value.Value, 1e-6);
        Assert.DoesNotContain(channel.Coils, c => c.IsOpen);
    }

    private static IReadOnlyList<ChannelResult> Solve(string runs, string more = "")
    {
        var read = SpecReader.Read(Example.File(Gear.TrimEnd() + "\n" + more + "runs:\n" + runs + "\n"), new FilesInMemory([]));
        var wired = read.Then(spec => WiringResolver.Resolve(spec, SizeChoices.None));
        Assert.Empty(wired.Findings.Select(f => $"{f.At}: {f.Rule}: {f.Message}"));
        return ElectricalSolver.Solve(wired.Value).Channels;
    }
}
