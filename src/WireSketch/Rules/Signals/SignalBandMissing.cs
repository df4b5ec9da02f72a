using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Rules.Signals;

/// <summary>A source without the bass that is asked of it.</summary>
internal sealed class SignalBandMissing : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/band-missing",
        Severity.Warning,
        Title: "The source lacks the band that the load needs",
        Why: """
            Many vehicle radios send no bass to small door speakers. A subwoofer on such a source has nothing to play, and turning it up
            brings only noise. Take the signal where the whole band is, sum it from several outputs, or restore it in a processor. A
            subwoofer is taken to need 40 Hz, a woofer or midbass 80 Hz, or the corner of the high-pass ahead of it if that is higher.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V, lowest: 120 Hz } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 300 W } #! signal/band-missing
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 5 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V, lowest: 30 Hz } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 300 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 5 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Output.Amplifies is not null && channel.Fault == LoadFault.None
        let signal = SignalFeeds.InputsOf(install, channel)
            .Where(s => s.Lowest is not null && !s.Loops)
            .OrderBy(s => s.Lowest!.Value)
            .FirstOrDefault()
        where signal is not null
        from driver in ChannelWiring.Drivers(channel)
        let need = Need(install, channel, driver.Speaker)
        where need is not null && signal.Lowest > need.Value * 1.05
        select Report(
            driver.Speaker.Name.At,
            $"{driver.Speaker.Id} on {channel.Id} plays down to {need:limit}, and {signal.Chain[0].Id} gives nothing below "
                + $"{signal.Lowest:measured}",
            $"take the signal where the whole band is, or put in a processor that restores it; a high-pass at {signal.Lowest} would at "
                + $"least save the power",
            driver.Speaker.Id, channel.Id, signal.Chain[0].Id);

    private static Hertz? Need(InstalledSystem install, ChannelResult channel, Speaker speaker)
    {
        var least = speaker switch
        {
            { Subwoofer: true } => new Hertz(40),
            { Band.Value: SpeakerBand.Woofer or SpeakerBand.Midbass } => new Hertz(80),
            _ => (Hertz?)null,
        };
        return least is { } l ? ChannelFilters.HighPassOf(install, channel, speaker) is { } corner && corner > l ? corner : l : null;
    }
}
