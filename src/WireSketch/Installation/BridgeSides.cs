using WireSketch.Electrical;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>From which sides of an amplifier a bridged load is taken.</summary>
internal static class BridgeSides
{
    /// <summary>Whether a channel's fault is a bridge taken from the wrong sides.</summary>
    public static bool Explains(InstalledSystem install, ChannelResult channel) =>
        Bridges(channel.Gear).Any(b =>
            (b.Half == channel.Channel || b.Other == channel.Channel)
                && Between(install, channel.Gear, b.Half, b.Other) is not null);

    public static IEnumerable<(string Half, string Other)> Bridges(Gear amp) =>
        amp.SignalOutputs.Select(o => o.Amplifies)
            .OfType<AmplifierChannel>()
            .Where(c => c.BridgesWith is not null)
            .Select(c => (c.Name.Value, c.BridgesWith!.Value.Value));

    /// <summary>
    /// A run whose two conductors begin at the two halves, and not at the + of the one that is said to bridge and the - of the other.
    /// </summary>
    public static (WiredRun Run, Terminal A, Terminal B)? Between(InstalledSystem install, Gear amp, string half, string other)
    {
        foreach (var run in ChannelWiring.RunsAt(install.Wiring, $"{amp.Id}.{half}").Where(r => r.From.Length == 2))
        {
            var ends = run.From.Select(e => e.Nodes[0]).ToArray();
            var names = ends.Select(t => t.Shape.Name).ToHashSet(StringComparer.Ordinal);
            if (names.Contains(half)
                && names.Contains(other)
                && ends.Any(e => e.Side == (e.Shape.Name == half ? '-' : '+'))
                && ends.All(e => ReferenceEquals(e.Gear, amp)))
            {
                return (run, ends[0], ends[1]);
            }
        }

        return null;
    }
}
