using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>A load lower than a bridge bears.</summary>
internal sealed class LoadBridgedBelowMinimum : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/bridged-below-minimum",
        Severity.Error,
        Title: "Each half of a bridge sees less than it may drive",
        Why: """
            Each half of a bridge sees half of the load: 4 ohm across the bridge is 2 ohm for each half. An amplifier that may drive 2 ohm
            per channel therefore takes 4 ohm when bridged, unless its maker says otherwise: bridged-minimum.
            """,
        new Basis.Reasoning("two outputs in opposite phase share the load, so that each drives half of it"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing,
                     channels: { rl: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm, bridges-with: rr },
                                 rr: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 300 W }
            runs:
              S1: { from: [amp.rl.+, amp.rr.-], to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft } #! load/bridged-below-minimum
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing,
                     channels: { rl: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm, bridges-with: rr },
                                 rr: { power: { 4 ohm: 75 W, 2 ohm: 110 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 300 W }
            runs:
              S1: { from: [amp.rl.+, amp.rr.-], to: sub.coils, hookup: series, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel is { BridgedWith: not null, Fault: LoadFault.None, Nominal: not null, Minimum: not null }
            && MinimumLoads.IsBelow(channel.Nominal.Value, channel.Minimum.Value)
        select Of(install, channel, channel.Nominal!.Value, channel.Minimum!.Value);

    private Finding Of(InstalledSystem install, ChannelResult channel, Ohms load, Ohms minimum)
    {
        var (help, fixes) = HookupFixes.Remedy(install, channel, minimum);
        return Report(
            ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{ChannelWiring.Name(channel)} sees {load:measured} from "
                + $"{RunText.List(ChannelWiring.Drivers(channel).Select(d => d.Speaker.Id))}, so each half sees {load / 2}; "
                + $"{minimum:limit} across both is the least, {minimum / 2} for each half",
            help,
            [channel.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]) with
        { Fixes = fixes };
    }
}
