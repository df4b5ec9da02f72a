using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.Loads;

/// <summary>Outputs that drive each other.</summary>
internal sealed class LoadOutputsTied : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/outputs-tied",
        Severity.Error,
        Title: "Two outputs are joined",
        Why: """
            Two outputs on one wire drive each other as soon as they differ by a hair: both get hot, one dies. To get more power into one
            load, bridge two channels that are made for it, plus of one and minus of the other, and say so at the amplifier: bridges-with.
            """,
        new Basis.Reasoning("an output is a source of voltage; two of them may not be joined unless the maker provides for it"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing,
                     channels: { left: { power: { 4 ohm: 75 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 75 W }, minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 200 W }
            runs:
              S1: { from: amp.left, to: sub, wire: 12 AWG, length: 9 ft }
              S2: { from: amp.right, to: sub, wire: 12 AWG, length: 9 ft } #! load/outputs-tied
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing,
                     channels: { left: { power: { 4 ohm: 75 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 75 W }, minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 200 W }
            runs:
              S1: { from: amp.left, to: sub.coil.1, wire: 12 AWG, length: 9 ft }
              S2: { from: amp.right, to: sub.coil.2, wire: 12 AWG, length: 9 ft }
            """);

    /// <summary>One finding for all outputs that hang together.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var groups = new List<List<ChannelResult>>();
        foreach (var channel in install.Answers.Channels.Where(c => c.Fault == LoadFault.TiedToOutput && !BridgeSides.Explains(install, c)))
        {
            var joined = groups.Where(g => g.Any(c => Meets(install.Wiring, c, channel))).ToArray();
            var all = joined.SelectMany(g => g).Append(channel).ToList();
            groups.RemoveAll(joined.Contains);
            groups.Add(all);
        }

        return groups.Select(g => Of(install, [.. g]));
    }

    private static bool Meets(Wiring wiring, ChannelResult a, ChannelResult b) =>
        a.Coils.Any(x => b.Coils.Any(y => x.Speaker.Id == y.Speaker.Id && x.Coil == y.Coil))
            || NetsOf(wiring, a).Intersect(NetsOf(wiring, b), StringComparer.Ordinal).Any();

    private static IEnumerable<string> NetsOf(Wiring wiring, ChannelResult channel) =>
        ChannelWiring.Halves(channel).SelectMany(h => ChannelWiring.Sides(wiring, h)).Select(t => wiring.NetOf[t.Index].Id);

    private Finding Of(InstalledSystem install, ImmutableArray<ChannelResult> tied)
    {
        var last = tied.Select(c => ChannelWiring.RunOf(install.Wiring, c)).OfType<WiredRun>().MaxBy(r => install.Wiring.Runs.IndexOf(r));
        var pair = tied.Length == 2 && tied[0].Output.Amplifies is not null && ReferenceEquals(tied[0].Gear, tied[1].Gear);
        return Report(
            last?.Run.Name.At ?? ChannelWiring.PlaceOf(install.Wiring, tied[^1]),
            $"{RunText.List(tied.Select(c => c.Id))} are joined by their wires or their load, and drive each other",
            pair
                ? $"give each a load of its own; or, if the amplifier may be bridged, write bridges-with: {tied[1].Channel} at "
                    + $"{tied[0].Channel} and from: [{tied[0].Id}.+, {tied[1].Id}.-]"
                : "give each output a load of its own",
            [.. tied.Select(c => c.Id), .. tied.SelectMany(c => ChannelWiring.Subjects(install.Wiring, c))]);
    }
}
