using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>A vented box whose driver nothing holds below its tuning.</summary>
internal sealed class LoadNoSubsonic : Rule
{
    /// <summary>Where to start: a little below the tuning (common practice, no published source).</summary>
    private const double Start = 0.8;

    /// <summary>A filter this far below the tuning leaves the cone alone for too long (common practice, no published source).</summary>
    private const double TooLow = 0.6;

    public override RuleCard Card { get; } = new(
        Id: "load/no-subsonic",
        Severity.Advice,
        Title: "A vented box has no subsonic filter",
        Why: """
            Below its tuning a vented box stops holding the cone: it flaps as far as the power drives it, without sound, and strikes. A
            subsonic filter a little below the tuning takes away what nobody hears. Sealed boxes do not need one.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W, enclosure: { type: vented, tuned: 34 Hz } } #! load/no-subsonic
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz, subsonic: 28 Hz } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W, enclosure: { type: vented, tuned: 34 Hz } }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var channel in install.Answers.Channels.Where(c => c.Fault == LoadFault.None && c.Output.Amplifies is not null))
        {
            foreach (var (speaker, _) in ChannelWiring.Drivers(channel).Where(d => d.Speaker.EnclosureType?.Value == EnclosureType.Vented))
            {
                var filter = ChannelFilters.Subsonic(install, channel);
                var tuned = speaker.Tuned;
                if (filter is { } f && (tuned is not { } t || f.Value.Value >= t.Value.Value * TooLow))
                {
                    continue;
                }

                var box = tuned is { } at
                    ? FindingText.Of($"the vented box of {speaker.Id} is tuned to {at:tuning}")
                    : $"the box of {speaker.Id} is vented";
                var start = tuned is { } s ? Quantity.Digits(s.Value.Value * Start, 2) + " Hz" : "28 Hz, or a little below the tuning";
                yield return Report(
                    speaker.EnclosureType!.Value.At,
                    filter is { } low
                        ? FindingText.Of(
                            $"{box} and the subsonic filter of {ChannelWiring.Name(channel)} stands at {low:measured}, too far below")
                        : $"{box} and no subsonic filter is noted for {ChannelWiring.Name(channel)}",
                    $"write settings: {{ subsonic: {start} }} at {channel.Gear.Id}", speaker.Id, channel.Id, channel.Gear.Id);
            }
        }
    }
}
