using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Loads;

/// <summary>Power that is shared unevenly.</summary>
internal sealed class LoadUnbalanced : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/unbalanced",
        Severity.Warning,
        Title: "Like drivers on one channel get unlike power",
        Why: """
            Two like drivers on one channel should play alike. If one gets a fifth more power, the image moves, and the stronger one fails
            first. It comes from drivers of different impedance, or from a series-parallel hookup that is not symmetrical.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { rear: { power: { 4 ohm: 60 W, 2 ohm: 100 W }, minimum: 2 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 8 ohm, handles: 80 W }
            runs:
              S1: { from: amp.rear, to: [left, right], hookup: parallel, wire: 14 AWG, length: 9 ft } #! load/unbalanced
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { rear: { power: { 4 ohm: 60 W, 2 ohm: 100 W }, minimum: 2 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              S1: { from: amp.rear, to: [left, right], hookup: parallel, wire: 14 AWG, length: 9 ft }
            """);

    private const double Limit = 0.2;

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel.Fault == LoadFault.None && !channel.Coils.Any(c => c.IsOpen)
        from kind in ChannelWiring.Drivers(channel).GroupBy(d => (d.Speaker.Subwoofer, d.Speaker.Band?.Value))
        where kind.Count() > 1
        let shares = kind.Select(d => (d.Speaker, Share: d.Coils.Sum(c => c.ShareOfPower.Value))).OrderByDescending(d => d.Share).ToArray()
        let most = shares[0]
        let least = shares[^1]
        where least.Share < most.Share * (1 - Limit)
        select Report(
            ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{least.Speaker.Id} gets {new Share(least.Share / most.Share):measured} of what {most.Speaker.Id} gets from {channel.Id}",
            "use like drivers, or a hookup that treats them alike; or give each a channel of its own",
            [channel.Id, least.Speaker.Id, most.Speaker.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]).With(
                ValueRole.Limit, new Share(1 - Limit));
}
