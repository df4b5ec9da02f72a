using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;

namespace WireSketch.Rules.Loads;

/// <summary>Filters that leave nothing to play.</summary>
internal sealed class LoadFiltersCross : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/filters-cross",
        Severity.Warning,
        Title: "The high-pass stands above the low-pass",
        Why: """
            What the one lets through the other stops: next to nothing is left. It happens when a processor and an amplifier both filter,
            or when a rear channel with its high-pass on is taken for the subwoofer.
            """,
        new Basis.Reasoning("a high-pass above a low-pass leaves no band between them"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing,
                     channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm, settings: { high-pass: 120 Hz } } }, #! load/filters-cross
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
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

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Fault == LoadFault.None
        let high = ChannelFilters.HighPass(install, channel)
        let low = ChannelFilters.LowPass(install, channel)
        where high is not null && low is not null && high.Value.Value.Value >= low.Value.Value.Value
        select Report(
            high.Value.At,
            $"{ChannelWiring.Name(channel)} passes what is above {high:measured} and what is below {low:limit}: nothing is left between",
            $"take one of the two filters off, or set the high-pass below {low}", channel.Id, channel.Gear.Id);
}
