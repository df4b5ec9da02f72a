using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Loads;

/// <summary>Level lost in speaker wire.</summary>
internal sealed class LoadWireLoss : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/wire-loss",
        Severity.Advice,
        Title: "The speaker wire takes a tenth of the power",
        Why: """
            Half a decibel is a tenth of the power, heating the cable instead of moving the cone, and the amplifier's grip on the cone goes
            with it. Low loads over long runs are the usual cause: one size up mends it for little money.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 18 AWG, length: 20 ft } #! load/wire-loss
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 10 AWG, length: 20 ft }
            """);

    private static readonly Decibels Limit = new(0.5);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Fault == LoadFault.None && channel.WireLoss > Limit
        let run = ChannelWiring.RunOf(install.Wiring, channel)
        where run is not null
        select Of(channel, run);

    private Finding Of(ChannelResult channel, WiredRun run)
    {
        var size = WireSizes.AtLeast(run.Wire.Size.Area.Value * (channel.WireLoss / Limit), run.Wire.Size);
        return Report(
            RunText.WireAt(run),
            $"{channel.WireLoss:measured} ({new Share(1 - (1 / channel.WireLoss.PowerRatio))} of the power) from "
                + $"{ChannelWiring.Name(channel)} stays in the wire: {channel.Nominal} at the end of "
                + $"{PrintedValue.Of(run.LengthTaken, run.Run.Length?.Words ?? run.LengthTaken.ToString())} of {RunText.Gauge(run)}",
            size is { } s
                ? FindingText.Of($"make {new WantedSize(run.Id, s)}, or shorten it")
                : $"shorten {run.Id}, or choose a hookup with a higher load",
            run.Id, channel.Id).With(ValueRole.Limit, Limit) with
        {
            Fixes = size is { } thicker ? RunText.SizeFix(run, thicker) : [],
        };
    }
}
