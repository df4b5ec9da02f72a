using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Rules.Loads;

/// <summary>Speaker wire that carries more than it may at full output.</summary>
internal sealed class LoadWireOverloaded : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/wire-overloaded",
        Severity.Error,
        Title: "The speaker wire carries more than it may",
        Why: """
            No fuse watches over speaker wire: the amplifier gives what the load takes for as long as it is played. Wire that is too thin
            for the current at the channel's full output heats its insulation, inside trim and doors. Thicker wire, or a higher load,
            mends it.
            """,
        new Basis.Published(
            "33 CFR 183.425(b), Table 5 with its notes (allowable amperage of conductors); written for boats, taken here as good practice"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 1 ohm: 1500 W }, minimum: 1 ohm } },
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 2 x 2 ohm, handles: 1500 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 18 AWG, length: 1 ft } #! load/wire-overloaded
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 1 ohm: 1500 W }, minimum: 1 ohm } },
                     settings: { low-pass: 80 Hz } }
              sub: { is: subwoofer, coils: 2 x 2 ohm, handles: 1500 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 10 AWG, length: 1 ft }
            """);

    /// <summary>
    /// One finding for a run: its conductor that is most overloaded. Where speaker wires branch, each carries at least what its coil
    /// takes.
    /// </summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel is { Fault: LoadFault.None, Volts: not null, Loaded: not null }
        from carried in Currents(install.Wiring, channel)
        let run = install.Wiring.RunsById[carried.Conductor.RunId]
        let ampacity = MayCarry(install.Answers.Conductors[carried.Conductor.Index])
        where !SignalCable(run) && ampacity is not null && carried.Amps > ampacity
        group (Conductor: carried.Conductor, carried.Amps, Ampacity: ampacity.Value, Channel: channel) by run into ofRun
        select Of(install, ofRun.Key, ofRun.MaxBy(x => x.Amps / x.Ampacity));

    /// <summary>A signal cable is told as such.</summary>
    private static bool SignalCable(WiredRun run) => run.Wire.IsLinePair;

    private Finding Of(InstalledSystem install, WiredRun run, (Conductor Conductor, Amps Amps, Amps Ampacity, ChannelResult Channel) worst)
    {
        var size = WireSizes.Carrying(worst.Amps, install.Answers.Conductors[worst.Conductor.Index]);
        return Report(
            RunText.WireAt(run),
            $"{RunText.Full(install, run)} carries {worst.Amps:measured} when {ChannelWiring.Name(worst.Channel)} gives its "
                + $"{worst.Channel.Power}, and may carry {worst.Ampacity:limit}",
            size is { } s
                ? FindingText.Of($"make {new WantedSize(run.Id, s)}")
                : $"choose a hookup with a higher load, or lay several wires side by side",
            run.Id,
            worst.Channel.Id) with
        {
            Fixes = size is { } thicker ? RunText.SizeFix(run, thicker) : [],
        };
    }

    /// <summary>
    /// Current of the conductors at the channel, shared by those that lie side by side, and of those that land on its coils.
    /// </summary>
    private static IEnumerable<(Conductor Conductor, Amps Amps)> Currents(Wiring wiring, ChannelResult channel)
    {
        var all = new Amps(channel.Volts!.Value.Value / channel.Loaded!.Value.Value);
        foreach (var terminal in ChannelWiring.Halves(channel).SelectMany(h => ChannelWiring.Sides(wiring, h)))
        {
            var cores = wiring.ConductorsAt[terminal.Index].Where(c => c.Kind == RunKind.Speaker).ToArray();
            foreach (var core in cores.Length == 1 || channel.Coils.Length == 1 ? cores : [])
            {
                yield return (core, all / cores.Length);
            }
        }

        foreach (var coil in channel.Coils.Where(c => c.Power is not null))
        {
            var amps = new Amps(Math.Sqrt(coil.Power!.Value.Value / coil.Speaker.CoilImpedance.Value));
            foreach (var end in new[]
            {
                ChannelWiring.CoilEnd(wiring, coil.Speaker, coil.Coil, '+'),
                ChannelWiring.CoilEnd(wiring, coil.Speaker, coil.Coil, '-')
            }.OfType<Terminal>())
            {
                var cores = wiring.ConductorsAt[end.Index].Where(c => !c.IsJumper || c.Length.Value > 0).ToArray();
                if (cores.Length == 1)
                {
                    yield return (cores[0], amps);
                }
            }
        }
    }

    /// <summary>
    /// Below the table's thinnest size: what that carries, in proportion to the copper (common practice, no published source).
    /// </summary>
    private static Amps? MayCarry(ConductorResult answer)
    {
        var (thinnest, wire) = (AmpacityTable.Sizes[0], answer.Conductor.Wire);
        return answer.Ampacity
            ?? (AmpacityTable.Of(thinnest, wire.Insulation) is { } table
                ? table * answer.Correction.Value * (wire.Size.Area / thinnest.Area)
                : null);
    }
}
