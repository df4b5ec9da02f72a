using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.Loads;

/// <summary>Coils that oppose each other, or a driver that moves against its fellows.</summary>
internal sealed class LoadCoilReversed : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/coil-reversed",
        Severity.Error,
        Title: "A coil or a driver moves the wrong way",
        Why: """
            Two coils of one driver that push against each other make heat and no sound, and the amplifier still sees the load. One driver
            of a set that moves the other way cancels the bass of the rest and blurs the stage. Plus goes to plus, all along the chain; a
            polarity switch counts as well.
            """,
        new Basis.Reasoning("sign of the current in each coil, with the polarity settings of the channel"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coil.1, wire: 12 AWG, length: 9 ft }
              S2: { from: amp.sub, to: [sub.coil.2.-, sub.coil.2.+], wire: 12 AWG, length: 9 ft } #! load/coil-reversed
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 250 W, 2 ohm: 400 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coil.1, wire: 12 AWG, length: 9 ft }
              S2: { from: amp.sub, to: [sub.coil.2.+, sub.coil.2.-], wire: 12 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var drivers = (from channel in install.Answers.Channels
                       where channel.Fault == LoadFault.None
                       let flips = ChannelFilters.Along(install, channel).Count(s => s.Polarity?.Value == Polarity.Reversed) % 2 == 1
                       from driver in ChannelWiring.Drivers(channel)
                       let moving = driver.Coils.Where(c => !c.IsOpen).ToArray()
                       where moving.Length > 0
                       select (Channel: channel, driver.Speaker, Moving: moving, Flips: flips)).ToArray();
        foreach (var d in drivers.Where(d => IsMixed(d.Moving)))
        {
            yield return Opposed(install, d.Channel, d.Speaker, d.Moving);
        }

        foreach (var set in drivers.Where(d => !IsMixed(d.Moving)).GroupBy(d => (d.Speaker.Subwoofer, d.Speaker.Band?.Value)))
        {
            var ways = set.Select(d => (d.Channel, d.Speaker, Reversed: d.Moving[0].IsReversed != d.Flips)).ToArray();
            var reversed = ways.Count(w => w.Reversed);
            if (reversed == 0 || reversed == ways.Length)
            {
                continue;
            }

            // Where most are reversed, it is the few others that stand out.
            var odd = reversed * 2 <= ways.Length;
            foreach (var (channel, speaker, _) in ways.Where(w => w.Reversed == odd))
            {
                yield return Against(install, channel, speaker, [.. ways.Where(w => w.Reversed != odd).Select(w => w.Speaker.Id)]);
            }
        }
    }

    private static bool IsMixed(CoilResult[] coils) => coils.Any(c => c.IsReversed) && coils.Any(c => !c.IsReversed);

    private Finding Opposed(InstalledSystem install, ChannelResult channel, Speaker speaker, CoilResult[] coils)
    {
        var wrong = coils.Where(c => c.IsReversed).ToArray();
        var run = ChannelWiring.RunAtCoil(install.Wiring, speaker, wrong[0].Coil);
        return Report(
            run is null ? speaker.Name.At : SignalFeeds.EndAt(run, speaker),
            $"{RunText.List(wrong.Select(c => $"coil.{c.Coil}"))} of {speaker.Id} pushes against "
                + $"{RunText.List(coils.Where(c => !c.IsReversed).Select(c => $"coil.{c.Coil}"))}: the cone stands still while "
                + $"{channel.Id} drives both",
            "swap plus and minus at that coil",
            speaker.Id, run?.Id ?? channel.Id, channel.Id);
    }

    private Finding Against(InstalledSystem install, ChannelResult channel, Speaker speaker, string[] others)
    {
        var run = ChannelWiring.RunAtCoil(install.Wiring, speaker, 1);
        return Report(
            run is null ? speaker.Name.At : SignalFeeds.EndAt(run, speaker),
            $"{speaker.Id} on {channel.Id} moves against "
                + $"{(others.Length <= 3 ? RunText.List(others) : $"{others[0]}, {others[1]} and {others.Length - 2} others of its kind")}",
            $"swap plus and minus at {speaker.Id}, or set its channel's polarity",
            Severity.Warning,
            speaker.Id, run?.Id ?? channel.Id, channel.Id);
    }
}
