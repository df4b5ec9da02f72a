using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.Loads;

/// <summary>A subwoofer that plays voices.</summary>
internal sealed class LoadNoLowPass : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/no-low-pass",
        Severity.Advice,
        Title: "A subwoofer has no low-pass filter",
        Why: """
            Without a low-pass the subwoofer plays voices too: one hears where it stands, and it covers the front speakers. 80 Hz is the
            usual place to start from; fine tuning goes by ear.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft } #! load/no-low-pass
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } },
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Fault == LoadFault.None
            && channel.Output.Amplifies is not null
            && channel.Coils.Any(c => c.Speaker.Subwoofer)
            && channel.Coils.All(c => c.Speaker.Subwoofer || c.Speaker.Band?.Value == SpeakerBand.Woofer)
        where ChannelFilters.LowPass(install, channel) is null
        let sub = channel.Coils.First(c => c.Speaker.Subwoofer).Speaker
        where !(sub.InVehicle && channel.Gear.InVehicle)
        select Report(
            ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{sub.Id} gets everything that {ChannelWiring.Name(channel)} plays: no low-pass is noted",
            "write settings: { low-pass: 80 Hz } where the filter is set", channel.Id, sub.Id, channel.Gear.Id);
}
