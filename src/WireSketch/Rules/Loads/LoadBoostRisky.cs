using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>A bass boost that drives a vented box below its tuning, or eats the channel's power.</summary>
internal sealed class LoadBoostRisky : Rule
{
    private static readonly Decibels Most = new(6);

    public override RuleCard Card { get; } = new(
        Id: "load/boost-risky",
        Severity.Warning,
        Title: "The bass boost asks for more than the driver or the channel has",
        Why: """
            6 dB more at one frequency take four times the power there: the channel clips or the driver strikes. Below the tuning of a
            vented box nothing holds the cone, so a boost there is the quickest way to break it. Turn the gain down by the boost, or the
            boost off.
            """,
        new Basis.Reasoning("the ratio of power is 10^(dB/10); 6 dB as the limit is common practice, no published source"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz, subsonic: 28 Hz, boost: 9 dB at 45 Hz } } #! load/boost-risky
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W, enclosure: { type: vented, tuned: 34 Hz } }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz, subsonic: 28 Hz, boost: 3 dB at 45 Hz } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W, enclosure: { type: vented, tuned: 34 Hz } }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var channel in install.Answers.Channels.Where(c => c.Fault == LoadFault.None))
        {
            foreach (var settings in ChannelFilters.Along(install, channel)
                .Where(s => s is { Boost: not null, BoostBy.Value: > 0 })
                .Distinct())
            {
                var boost = settings.Boost!.Value;
                var box = channel.Coils.Select(c => c.Speaker)
                    .FirstOrDefault(s =>
                        s.EnclosureType?.Value == EnclosureType.Vented && s.Tuned is { } t && settings.BoostAt is { } at && at < t.Value);
                if (box is not null)
                {
                    yield return Report(
                        boost.At,
                        $"the boost of {PrintedValue.Of(settings.BoostBy!.Value, boost.Words)} on {ChannelWiring.Name(channel)} lies "
                            + $"below the tuning of {box.Id}, {box.Tuned:limit}: nothing holds its cone there",
                        "take the boost off", channel.Id, box.Id, channel.Gear.Id).With(ValueRole.Measured, settings.BoostAt ?? default);
                }
                else if (settings.BoostBy!.Value > Most)
                {
                    yield return Report(
                        boost.At,
                        $"the boost of {PrintedValue.Of(settings.BoostBy!.Value, boost.Words):measured} on "
                            + $"{ChannelWiring.Name(channel)} asks for {Quantity.Digits(settings.BoostBy.Value.PowerRatio, 2)} times "
                            + $"the power there",
                        $"boost by no more than {Most}, and set the gain lower by as much as you boost",
                        channel.Id,
                        channel.Gear.Id).With(ValueRole.Limit, Most);
                }
            }
        }
    }
}
