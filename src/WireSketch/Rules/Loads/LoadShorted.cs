using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.Loads;

/// <summary>An output with next to no load.</summary>
internal sealed class LoadShorted : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/shorted",
        Severity.Error,
        Title: "An output is shorted",
        Why: """
            A short across an output is current without limit: at best the amplifier goes into protection, at worst it burns. It comes from
            a jumper, a strand that bridges two terminals, or plus and minus on the same point.
            """,
        new Basis.Reasoning("a load below 0.2 ohm is no voice coil"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
              S2: { from: amp.sub.+, to: amp.sub.-, wire: 12 AWG, length: 2 in } #! load/shorted
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Fault == LoadFault.Shorted
        let runs = ChannelWiring.Halves(channel).SelectMany(h => ChannelWiring.RunsAt(install.Wiring, h)).DistinctBy(r => r.Id).ToArray()
        let culprit = runs.FirstOrDefault(r => r.Conductors.Any(c => Joins(install.Wiring, channel, c)))
            ?? (runs.Length > 0 ? runs[^1] : null)
        select Report(
            culprit?.Run.Name.At ?? ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{(culprit is null ? "a wire" : culprit.Id)} shorts {ChannelWiring.Name(channel)}: its plus and minus are "
                + $"joined{(channel.Nominal is { Value: > 0.001 } load ? FindingText.Of($" by {load:measured}") : FindingText.None)}",
            culprit is not null && runs.Length > 1
                ? $"take {culprit.Id} out, or bring one of its ends to where it belongs"
                : "bring plus and minus to the two ends of the load",
            [channel.Id, .. runs.Select(r => r.Id)]);

    /// <summary>A conductor straight from one side to the other.</summary>
    private static bool Joins(Wiring wiring, ChannelResult channel, Conductor c) =>
        ChannelWiring.Sides(wiring, channel.Id) is [var plus, var minus]
            && ((c.From.Index == plus.Index && c.To.Index == minus.Index) || (c.From.Index == minus.Index && c.To.Index == plus.Index));
}
