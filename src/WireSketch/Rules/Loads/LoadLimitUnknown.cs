using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;

namespace WireSketch.Rules.Loads;

/// <summary>A channel or driver of which too little is known to check its load.</summary>
internal sealed class LoadLimitUnknown : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/limit-unknown",
        Severity.Advice,
        Title: "A limit is not stated, so the load is not checked against it",
        Why: """
            A channel whose lowest load is not stated passes with any load, and a driver whose power handling is not stated with any
            power. Both figures stand in the papers of the device: two more entries, and the check means something.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 4 ohm } #! load/limit-unknown
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var channel in install.Answers.Channels.Where(c =>
            c is { Fault: LoadFault.None, Output.Amplifies: not null, Gear.InVehicle: false, Minimum: null, Nominal: not null }))
        {
            yield return Report(
                ChannelWiring.Declared(channel.Gear, channel.Channel),
                $"nothing says what load {ChannelWiring.Name(channel)} may drive: {channel.Nominal} is not checked",
                "write minimum: with the lowest load of its papers, and power: by load", channel.Id, channel.Gear.Id);
        }

        var driven = install.Answers.Channels.Where(c => c is { Fault: LoadFault.None, Power: not null, Output.Amplifies: not null })
            .SelectMany(c => c.Coils.Select(k => (Channel: c, k.Speaker)));
        foreach (var (channel, speaker) in driven.DistinctBy(x => x.Speaker.Id)
            .Where(x => x.Speaker is { Handles: null, InVehicle: false }))
        {
            yield return Report(
                speaker.Name.At,
                $"nothing says what power {speaker.Id} handles: {channel.Power} from {ChannelWiring.Name(channel)} are not checked",
                "write handles: with the continuous power of its papers", speaker.Id, channel.Id);
        }
    }
}
