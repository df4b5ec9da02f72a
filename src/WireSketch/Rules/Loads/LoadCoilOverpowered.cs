using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>More power in a coil than it handles.</summary>
internal sealed class LoadCoilOverpowered : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/coil-overpowered",
        Severity.Error,
        Title: "A voice coil gets more power than it takes",
        Why: """
            More than the driver's continuous power cooks the glue of the coil, first at long loud passages, then for good. What the
            amplifier gives is divided among the coils by the way they are wired. Set the gain for what the driver takes, not for what the
            amplifier gives (the set-up sheet has the volts), or choose drivers or an amplifier that fit each other. A driver behind a high-
            pass at 1 kHz or above meets little of the power that music holds, so it is judged at twice its power.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 150 W } #! load/coil-overpowered
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """);

    /// <summary>Beyond this share of what it handles an overload is an error.</summary>
    private const double Gross = 2;

    /// <summary>Two figures of sheets that agree within this share are alike.</summary>
    private const double Alike = 1.02;

    private static readonly Hertz High = new(1000);

    /// <summary>One finding for a channel: the coil that is worst off leads.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel is { Output.Amplifies: not null, Fault: LoadFault.None } && !IsTooLow(channel)
        let over = Over(install, channel)
        where !over.IsEmpty
        select Of(install, channel, over);

    /// <summary>A load below the minimum is another finding, and the power into it means little.</summary>
    private static bool IsTooLow(ChannelResult channel) =>
        channel is { Nominal: { } load, Minimum: { } minimum } && MinimumLoads.IsBelow(load, minimum);

    private static ImmutableArray<(CoilResult Coil, double Times)> Over(InstalledSystem install, ChannelResult channel) =>
        [.. channel.Coils.Where(c => c is { Power: not null, Handles.Value: > 0, IsOpen: false })
            .Select(c =>
                (
                    Coil: c,
                    Times: c.Power!.Value / c.Handles!.Value / (ChannelFilters.HighPassOf(install, channel, c.Speaker) >= High ? 2 : 1)))
            .Where(x => x.Times > Alike).OrderByDescending(x => x.Times)];

    private Finding Of(InstalledSystem install, ChannelResult channel, ImmutableArray<(CoilResult Coil, double Times)> over)
    {
        var (coil, times) = over[0];
        var drivers = over.Select(o => o.Coil.Speaker.Id).Distinct(StringComparer.Ordinal).ToArray();
        var name = coil.Speaker.CoilCount > 1 ? $"each coil of {coil.Speaker.Id}" : coil.Speaker.Id;
        var others = drivers.Length > 1 ? $"; {RunText.List(drivers.Skip(1))} too" : "";
        return Report(
            coil.Speaker.Name.At,
            $"{name} gets {coil.Power:measured} from {ChannelWiring.Name(channel)} at full output and takes {coil.Handles:limit}{others}",
            channel.TargetVolts is { } target
                ? $"set the gain for {target} at the output, not for the {channel.Volts} that the channel can give, and accept this; or "
                    + $"choose a driver that takes more"
                : "choose a driver that takes more, or an amplifier that gives less",
            times > Gross ? Severity.Error : Severity.Warning,
            [.. drivers, channel.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]);
    }
}
