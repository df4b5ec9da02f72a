using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Loads;

/// <summary>An output side that touches ground or plus.</summary>
internal sealed class LoadOutputGrounded : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/output-grounded",
        Severity.Error,
        Title: "A speaker output is on the body or on the supply",
        Why: """
            Most amplifiers and radios drive both sides of a speaker: neither is ground. A side on the body or on a supply is a short
            through half of the output stage. Speaker wires run as pairs, all the way, and never share the vehicle's ground.
            """,
        new Basis.Reasoning("both sides of a bridged output stage carry signal"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
              S2: { from: amp.sub.-, to: bolt, wire: 12 AWG, length: 10 in } #! load/output-grounded
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """);

    /// <summary>One finding for the run that does it, whatever outputs it grounds.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Fault == LoadFault.Grounded
        let culprit = Culprit(install.Wiring, channel)
        group channel by culprit?.Id ?? channel.Id into grounded
        let run = install.Wiring.RunsById.GetValueOrDefault(grounded.Key)
        select Report(
            run?.Run.Name.At ?? ChannelWiring.PlaceOf(install.Wiring, grounded.First()),
            $"{(run is null ? "the wiring" : run.Id)} puts {RunText.List(grounded.Select(ChannelWiring.Name))} on "
                + $"{(run is null ? "the body" : RunText.List(Lands(run).Select(t => t.Id).Distinct(StringComparer.Ordinal)))}; an "
                + $"output of it must not touch ground or supply",
            "take that connection out, and run both sides of the load to the output's own plus and minus",
            [grounded.First().Id, .. grounded.Select(c => c.Id), grounded.Key]);

    /// <summary>The run that leads from the channel's wires to ground or supply.</summary>
    private static WiredRun? Culprit(Wiring wiring, ChannelResult channel)
    {
        var coils = channel.Coils.SelectMany(c =>
            new[] { ChannelWiring.CoilEnd(wiring, c.Speaker, c.Coil, '+'), ChannelWiring.CoilEnd(wiring, c.Speaker, c.Coil, '-') })
            .OfType<Terminal>();
        var nets = ChannelWiring.Halves(channel)
            .SelectMany(h => ChannelWiring.Sides(wiring, h))
            .Concat(coils)
            .Select(t => wiring.NetOf[t.Index].Id)
            .ToHashSet(StringComparer.Ordinal);
        return wiring.Runs.FirstOrDefault(r =>
            r.Conductors.Any(c => nets.Contains(wiring.NetOf[c.From.Index].Id) && IsPower(c.From) != IsPower(c.To)));
    }

    private static IEnumerable<Terminal> Lands(WiredRun run) => run.Conductors.SelectMany(c => new[] { c.From, c.To }).Where(IsPower);

    private static bool IsPower(Terminal t) => t.Role is TerminalRole.Ground or TerminalRole.Supply;
}
