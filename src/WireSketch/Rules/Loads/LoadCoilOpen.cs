using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Rules.Loads;

/// <summary>A coil with one end, or none, connected.</summary>
internal sealed class LoadCoilOpen : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/coil-open",
        Severity.Error,
        Title: "A voice coil is left open",
        Why: """
            A driver with two coils needs current in both: with one left open it takes half its power, its motor is lopsided, and the
            amplifier sees another load than planned. To use one coil only, follow the driver maker's word on what to do with the other.
            """,
        new Basis.Reasoning(
            "both ends of every coil of a driver that is used must be joined to something, and current must be able to flow"),
        Bad: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 150 W, 2 ohm: 240 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W } #! load/coil-open
            runs:
              S1: { from: amp.sub, to: sub.coil.1, wire: 12 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              amp: { is: amplifier, origin: existing, channels: { sub: { power: { 4 ohm: 150 W, 2 ohm: 240 W }, minimum: 2 ohm } } }
              sub: { is: subwoofer, coils: 2 x 4 ohm, handles: 400 W }
            runs:
              S1: { from: amp.sub, to: sub.coils, hookup: parallel, wire: 12 AWG, length: 9 ft }
            """);

    /// <summary>Ends without a wire come first; a coil that is wired and still open is told only where they do not explain it.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var loose = install.Wiring.Gear.SelectMany(g => g.SpeakerParts)
            .OfType<VoiceCoil>()
            .Select(c => c.Speaker)
            .DistinctBy(s => s.Id)
            .Select(s =>
                (
                    Speaker: s,
                    Ends: Enumerable.Range(1, s.CoilCount)
                        .Select(n => (Coil: n, Plus: IsWired(install.Wiring, s, n, '+'), Minus: IsWired(install.Wiring, s, n, '-')))
                        .ToArray()))
            .Where(x => Array.Exists(x.Ends, e => e.Plus || e.Minus) && Array.Exists(x.Ends, e => !e.Plus || !e.Minus)).ToArray();
        foreach (var (speaker, ends) in loose)
        {
            yield return Loose(install, speaker, [.. ends.Where(e => !e.Plus || !e.Minus)]);
        }

        foreach (var channel in install.Answers.Channels.Where(c => c.Fault is LoadFault.None or LoadFault.Open))
        {
            var open = channel.Coils.Where(c => c.IsOpen).Select(c => c.Speaker).DistinctBy(s => s.Id).ToArray();
            if (open.Length > 0 && !channel.Coils.Any(c => loose.Any(l => l.Speaker.Id == c.Speaker.Id)))
            {
                yield return Report(
                    ChannelWiring.PlaceOf(install.Wiring, channel),
                    $"no current can flow from {ChannelWiring.Name(channel)} through {RunText.List(open.Select(s => s.Id))}: the way "
                        + $"back to the channel is missing",
                    "wire both ends of every coil, so that a way leads from the channel's plus through them to its minus",
                    [open[0].Id, channel.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]);
            }
        }
    }

    private static bool IsWired(Wiring wiring, Speaker speaker, int coil, char side) =>
        ChannelWiring.CoilEnd(wiring, speaker, coil, side) is { } end && (wiring.IsWired(end) || !wiring.LinksAt[end.Index].IsEmpty);

    private Finding Loose(InstalledSystem install, Speaker speaker, (int Coil, bool Plus, bool Minus)[] loose)
    {
        var (coil, plus, minus) = loose[0];
        var run = plus || minus ? ChannelWiring.RunAtCoil(install.Wiring, speaker, coil) : null;
        var name = speaker.CoilCount == 1 ? speaker.Id : $"{speaker.Id}.coil.{coil}";
        var what = plus || minus
            ? $"the {(plus ? "minus" : "plus")} of {name} is not connected"
            : $"{RunText.List(loose.Select(l => $"coil.{l.Coil}"))} of {speaker.Id} is not connected";
        return Report(
            run is null ? speaker.Name.At : SignalFeeds.EndAt(run, speaker),
            $"{what}: {speaker.Id} has {speaker.CoilCount} coil{(speaker.CoilCount > 1 ? "s" : "")} of {speaker.CoilImpedance}, and no "
                + $"current flows in it",
            speaker.CoilCount > 1
                ? $"bring the run to all of them: to: {speaker.Id}.coils, hookup: series or hookup: parallel"
                : $"bring the run to {speaker.Id}, both conductors",
            speaker.Id, run?.Id ?? speaker.Id);
    }
}
