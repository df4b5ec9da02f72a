using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>A small driver that gets the bass.</summary>
internal sealed class LoadNoHighPass : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/no-high-pass",
        Severity.Warning,
        Title: "A tweeter or midrange without a high-pass",
        Why: """
            A tweeter without a high-pass dies at the first drum, and a midrange distorts long before. Set one at the amplifier or
            processor, or put a passive crossover ahead of the driver: 2 kHz and above is usual for tweeters, 200 Hz and above for a
            midrange. A filter below 1 kHz for a tweeter, or below 100 Hz for a midrange, counts as none.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing,
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              tweeter-left: { is: speaker, band: tweeter, coils: 4 ohm, handles: 60 W } #! load/no-high-pass
              tweeter-right: { is: speaker, band: tweeter, coils: 4 ohm, handles: 60 W } #! load/no-high-pass
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 3 ft }
              S1: { from: amp.left, to: tweeter-left, wire: 16 AWG, length: 9 ft }
              S2: { from: amp.right, to: tweeter-right, wire: 16 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing,
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { high-pass: 3000 Hz } }
              tweeter-left: { is: speaker, band: tweeter, coils: 4 ohm, handles: 60 W }
              tweeter-right: { is: speaker, band: tweeter, coils: 4 ohm, handles: 60 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 3 ft }
              S1: { from: amp.left, to: tweeter-left, wire: 16 AWG, length: 9 ft }
              S2: { from: amp.right, to: tweeter-right, wire: 16 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Output.Amplifies is not null && channel.Fault == LoadFault.None
        from driver in ChannelWiring.Drivers(channel)
        let least = driver.Speaker.Band?.Value switch
        {
            SpeakerBand.Tweeter => new Hertz(1000),
            SpeakerBand.Midrange => new Hertz(100),
            _ => (Hertz?)null,
        }
        where least is not null
        let corner = ChannelFilters.HighPassOf(install, channel, driver.Speaker)
        where corner is null || corner < least
        select Report(
            driver.Speaker.Name.At,
            corner is { } low
                ? FindingText.Of(
                    $"{driver.Speaker.Id} is a {driver.Speaker.Band!.Value.Words}, and the high-pass ahead of it stands at {low:measured}")
                : $"{driver.Speaker.Id} is a {driver.Speaker.Band!.Value.Words}, and nothing between source and {channel.Id} keeps the "
                    + $"bass from it",
            $"set a high-pass for {channel.Id}, such as settings: {{ high-pass: "
                + $"{(driver.Speaker.Band!.Value.Value == SpeakerBand.Tweeter ? "3000 Hz" : "250 Hz")} }}, as its maker says; or put a "
                + $"passive crossover before it",
            driver.Speaker.Id, channel.Id);
}
