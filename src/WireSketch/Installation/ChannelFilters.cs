using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>The filters that a channel's signal passes: those of the amplifier, and of the output that feeds it.</summary>
internal static class ChannelFilters
{
    /// <summary>Settings along the signal, nearest to the speaker first.</summary>
    public static ImmutableArray<ChannelSettings> Along(InstalledSystem install, ChannelResult channel)
    {
        var settings = ImmutableArray.CreateBuilder<ChannelSettings>();
        settings.AddRange(channel.Gear.SignalOutputs
            .Where(o => o.Terminal.Name == channel.Channel || o.Terminal.Name == channel.BridgedWith)
            .Select(o => o.Settings));
        settings.Add(channel.Gear.DeviceSettings);
        foreach (var input in SignalFeeds.InputsOf(install, channel))
        {
            settings.AddRange(SignalFeeds.SettingsOf(install, input));
        }

        return settings.ToImmutable();
    }

    public static Written<Hertz>? HighPass(InstalledSystem install, ChannelResult channel) =>
        Highest([.. Along(install, channel).SelectMany(s => new[] { s.HighPass, s.Subsonic }).OfType<Written<Hertz>>()]);

    public static Written<Hertz>? LowPass(InstalledSystem install, ChannelResult channel)
    {
        var all = Along(install, channel).Select(s => s.LowPass).OfType<Written<Hertz>>().OrderBy(w => w.Value).ToArray();
        return all.Length == 0 ? null : all[0];
    }

    public static Written<Hertz>? Subsonic(InstalledSystem install, ChannelResult channel) =>
        Highest([.. Along(install, channel).SelectMany(s => new[] { s.Subsonic, s.HighPass }).OfType<Written<Hertz>>()]);

    private static Written<Hertz>? Highest(ImmutableArray<Written<Hertz>> all) =>
        all.IsEmpty ? null : all.OrderByDescending(w => w.Value).First();

    /// <summary>The highest high-pass ahead of a driver: the channel's, or that of a passive crossover; null if there is none.</summary>
    public static Hertz? HighPassOf(InstalledSystem install, ChannelResult channel, Speaker speaker)
    {
        var corners = new[] { HighPass(install, channel)?.Value, Passive(install, channel, speaker) }.OfType<Hertz>().ToArray();
        return corners.Length == 0 ? null : corners.Max();
    }

    /// <summary>
    /// The corner of the passive crossover that a driver hangs on; of a series capacitor, with the driver's nominal load: 1 / 2πRC.
    /// </summary>
    private static Hertz? Passive(InstalledSystem install, ChannelResult channel, Speaker speaker)
    {
        var ends = channel.Coils.Where(c => c.Speaker.Id == speaker.Id)
            .SelectMany(c =>
                new[]
                {
                    ChannelWiring.CoilEnd(install.Wiring, speaker, c.Coil, '+'),
                    ChannelWiring.CoilEnd(install.Wiring, speaker, c.Coil, '-')
                })
            .OfType<Terminal>();
        foreach (var terminal in ends.SelectMany(e => install.Wiring.NetOf[e.Index].Terminals))
        {
            if (terminal.Gear?.SpeakerParts.OfType<CrossoverWay>().FirstOrDefault(w => w.Output == terminal.Shape)?.Way is { } output
                && (output.HighPass?.Value ?? output.Band?.Value.Least ?? OfCapacitor(output, speaker)) is { } corner)
            {
                return corner;
            }
        }

        return null;
    }

    private static Hertz? OfCapacitor(CrossoverOutput output, Speaker speaker) =>
        output.Parts.FirstOrDefault(p => p is { Series: true, Capacitor: not null })?.Capacitor is { } c
            ? new Hertz(1 / (2 * Math.PI * speaker.CoilImpedance.Value * c.Value.Value))
            : null;
}
