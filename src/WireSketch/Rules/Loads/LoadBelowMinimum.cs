using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>A load lower than the channel bears.</summary>
internal sealed class LoadBelowMinimum : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/below-minimum",
        Severity.Error,
        Title: "The load is below what the channel may drive",
        Why: """
            Below its lowest load an amplifier gets hot, goes into protection in the middle of a song, or burns its output stage. Coils in
            parallel divide the load, coils in series add it up: choose another hookup, drivers with other coils, or another amplifier.
            """,
        new Basis.Reasoning(
            $"impedance of the coils as they are wired, wires taken as without resistance, against the minimum written for the channel, "
                + $"else the lowest load that its power is stated for"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 2 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft } #! load/below-minimum
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 2 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: series, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel is { BridgedWith: null, Fault: LoadFault.None, Nominal: not null, Minimum: not null }
            && MinimumLoads.IsBelow(channel.Nominal.Value, channel.Minimum.Value)
        select Of(install, channel, channel.Nominal!.Value, channel.Minimum!.Value);

    private Finding Of(InstalledSystem install, ChannelResult channel, Ohms load, Ohms minimum)
    {
        var (help, fixes) = HookupFixes.Remedy(install, channel, minimum);
        return Report(
            ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{channel.Id} sees {load:measured} from {RunText.List(ChannelWiring.Drivers(channel).Select(d => d.Speaker.Id))}; "
                + $"{minimum:limit} is the least that it may drive",
            help,
            [channel.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]) with
        { Fixes = fixes };
    }
}
