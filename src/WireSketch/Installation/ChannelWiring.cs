using System.Collections.Immutable;
using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Text;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Where in the file the load of an output channel is written.</summary>
internal static class ChannelWiring
{
    /// <summary>The two terminals of a channel, by its full name; empty if the device has no such channel.</summary>
    public static ImmutableArray<Terminal> Sides(Wiring wiring, string channel) =>
        wiring.TerminalsById.TryGetValue(channel + ".+", out var plus) && wiring.TerminalsById.TryGetValue(channel + ".-", out var minus)
            ? [plus, minus]
            : [];

    /// <summary>Full names of the channels of an answer: one, or both halves of a bridge.</summary>
    public static ImmutableArray<string> Halves(ChannelResult channel) =>
        channel.BridgedWith is { } other ? [channel.Id, $"{channel.Gear.Id}.{other}"] : [channel.Id];

    /// <summary>The name to show: <c>amp.sub</c>, or <c>amp.rl bridged with amp.rr</c>.</summary>
    public static string Name(ChannelResult channel) =>
        channel.BridgedWith is { } other ? $"{channel.Id} bridged with {channel.Gear.Id}.{other}" : channel.Id;

    /// <summary>The runs that land on a channel's terminals, in the order of the spec.</summary>
    public static ImmutableArray<WiredRun> RunsAt(Wiring wiring, string channel) =>
        [.. Sides(wiring, channel).SelectMany(t => wiring.ConductorsAt[t.Index]).Select(c => c.RunId).Distinct(StringComparer.Ordinal)
            .Select(id => wiring.RunsById[id]).OrderBy(r => wiring.Runs.IndexOf(r))];

    /// <summary>The run that brings a channel to its load; null if none lands on it.</summary>
    public static WiredRun? RunOf(Wiring wiring, ChannelResult channel) =>
        Halves(channel).SelectMany(h => RunsAt(wiring, h)).FirstOrDefault();

    /// <summary>Where to point for a channel's load: the hookup, else the far end of its run, else the channel.</summary>
    public static SourceSpan PlaceOf(Wiring wiring, ChannelResult channel)
    {
        if (RunOf(wiring, channel) is not { } run)
        {
            return Declared(channel.Gear, channel.Channel);
        }

        return run.Run.Hookup?.At ?? FarEnd(run, channel.Gear);
    }

    /// <summary>The end of a run that is not at a device.</summary>
    public static SourceSpan FarEnd(WiredRun run, Gear near) =>
        run.To.Any(e => ReferenceEquals(e.Gear, near)) ? run.Run.From[0].At : run.Run.To[0].At;

    /// <summary>Where a channel is declared.</summary>
    public static SourceSpan Declared(Gear gear, string channel) =>
        gear.SignalOutputs.FirstOrDefault(o => o.Terminal.Name == channel)?.DeclaredAt ?? gear.Name.At;

    /// <summary>The declaration of an amplifier's channel; null for other devices.</summary>
    public static AmplifierChannel? Own(ChannelResult channel) =>
        channel.Output.Amplifies;

    /// <summary>The drivers on a channel with their coils, in the order of the answer.</summary>
    public static ImmutableArray<(Speaker Speaker, ImmutableArray<CoilResult> Coils)> Drivers(ChannelResult channel) =>
        [.. channel.Coils.GroupBy(c => c.Speaker.Id, StringComparer.Ordinal).Select(g => (g.First().Speaker, g.ToImmutableArray()))];

    /// <summary>What else a finding about a channel concerns: its run and its drivers.</summary>
    public static IEnumerable<string> Subjects(Wiring wiring, ChannelResult channel) =>
        new[] { RunOf(wiring, channel)?.Id }.OfType<string>().Concat(Drivers(channel).Select(d => d.Speaker.Id));

    /// <summary>One end of a coil.</summary>
    public static Terminal? CoilEnd(Wiring wiring, Speaker speaker, int coil, char side) =>
        speaker.SpeakerParts.OfType<VoiceCoil>().FirstOrDefault(c => c.Number == coil) is not { Terminal: var pair } ? null
            : side == '+' ? wiring.PlusOf(speaker, pair)
            : wiring.MinusOf(speaker, pair);

    /// <summary>The run that lands on a coil; null if none does.</summary>
    public static WiredRun? RunAtCoil(Wiring wiring, Speaker speaker, int coil) =>
        new[] { CoilEnd(wiring, speaker, coil, '+'), CoilEnd(wiring, speaker, coil, '-') }.OfType<Terminal>()
            .SelectMany(t => wiring.ConductorsAt[t.Index])
            .OrderBy(c => c.IsJumper)
            .ThenBy(c => c.Index)
            .Select(c => wiring.RunsById[c.RunId])
            .FirstOrDefault();
}
