using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>A load so high that half of the power is never had.</summary>
internal sealed class LoadImpedanceTooHigh : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/impedance-too-high",
        Severity.Advice,
        Title: "The load wastes most of what the channel could give",
        Why: """
            An amplifier is paid for by the power it gives at its lowest load. Into a higher load it gives less: that is safe, and clean,
            but half of what was bought stays in the box. Where the drivers take the power, another hookup brings it out.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: series, wire: 12 AWG, length: 9 ft } #! load/impedance-too-high
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """);

    private const double Useful = 0.5;

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel is { Output.Amplifies: not null, Fault: LoadFault.None, Loaded: not null, Power: not null } && !channel.Coils.IsEmpty
        let most = Most(channel)
        where most is not null && channel.Power < most.Value.Power * Useful && !IsEnough(channel)
        select Of(install, channel, channel.Power!.Value, most.Value.Power, most.Value.Load);

    /// <summary>The most that the channel gives, and at which load.</summary>
    private static (Watts Power, Ohms Load)? Most(ChannelResult channel)
    {
        if (ChannelWiring.Own(channel) is not { } own)
        {
            return null;
        }

        var curve = channel.BridgedWith is null ? Electrical.Speakers.PowerCurve.Of(own) : Electrical.Speakers.PowerCurve.OfBridge(own);
        return curve.IsKnown && (channel.Minimum ?? curve.Lowest) is { } least ? (curve.At(least), least) : null;
    }

    /// <summary>The drivers would not take more anyway.</summary>
    private static bool IsEnough(ChannelResult channel) =>
        channel.Coils.All(c => c.Handles is not null) && channel.Power!.Value.Value >= 0.9 * channel.Coils.Sum(c => c.Handles!.Value.Value);

    private Finding Of(InstalledSystem install, ChannelResult channel, Watts power, Watts most, Ohms least)
    {
        var choice = HookupFixes.LowestAllowed(install.Wiring, channel, least);
        var better = choice is not null && choice.Makes < channel.Nominal!.Value * 0.99 ? choice : null;
        return Report(
            ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{ChannelWiring.Name(channel)} gives {power} into {channel.Loaded:measured}; into {least:limit} it would give {most}",
            better is not null
                ? $"write {better.Words}, which makes {better.Makes}"
                : $"drivers that make {least} would take all it has; or leave it, and save on the amplifier",
            [channel.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]) with
        { Fixes = better is not null ? HookupFixes.FixOf(install.Wiring, channel, better) : [] };
    }
}
