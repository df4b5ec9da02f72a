using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Speakers;

/// <summary>Finds what hangs together at speaker level.</summary>
internal sealed class SpeakerNetworks
{
    private readonly Wiring wiring;
    private readonly UnionFind joined;
    private readonly Dictionary<int, SpeakerNetwork> networks = [];
    private readonly HashSet<int> grounded = [];

    public SpeakerNetworks(Wiring wiring, Func<Conductor, Ohms> resistance)
    {
        this.wiring = wiring;
        joined = new(wiring.Terminals.Length);
        var conductors = wiring.Conductors.Where(c => c.Kind == RunKind.Speaker || IsSpeaker(c.From) || IsSpeaker(c.To)).ToArray();
        var links = wiring.Links.Where(l => l.Kind == ConnectionKind.Joint && (IsSpeaker(l.A) || IsSpeaker(l.B) || l.A.Role == TerminalRole.Any)).ToArray();
        var parts = wiring.Gear.SelectMany(PartsOf).ToArray();
        foreach (var c in conductors)
        {
            joined.Join(c.From.Index, c.To.Index);
        }

        foreach (var l in links)
        {
            joined.Join(l.A.Index, l.B.Index);
        }

        foreach (var p in parts)
        {
            joined.Join(p.A.Index, p.B.Index);
            if (p is NetworkPart.Filter f)
            {
                joined.Join(f.Common.Index, f.OutCommon.Index);
                joined.Join(f.A.Index, f.Common.Index);
            }
        }

        var conductorsOf = conductors.ToLookup(c => joined.Root(c.From.Index));
        var linksOf = links.ToLookup(l => joined.Root(l.A.Index));
        var partsOf = parts.ToLookup(p => joined.Root(p.A.Index));
        foreach (var root in conductorsOf.Select(g => g.Key).Concat(linksOf.Select(g => g.Key)).Concat(partsOf.Select(g => g.Key)).Distinct())
        {
            networks[root] = new([.. conductorsOf[root]], [.. linksOf[root]], [.. partsOf[root]], resistance);
        }

        foreach (var t in wiring.Terminals.Where(t => t.Role is TerminalRole.Ground or TerminalRole.Supply))
        {
            grounded.Add(joined.Root(t.Index));
        }
    }

    public int RootOf(Terminal terminal) => joined.Root(terminal.Index);

    /// <summary>The network at a terminal; null if nothing is wired to it.</summary>
    public SpeakerNetwork? At(Terminal terminal) => networks.GetValueOrDefault(RootOf(terminal));

    /// <summary>Joined by wire to the body or to a supply.</summary>
    public bool IsGrounded(Terminal terminal) => grounded.Contains(RootOf(terminal));

    private static bool IsSpeaker(Terminal t) => t.Role == TerminalRole.Speaker;

    private IEnumerable<NetworkPart> PartsOf(Gear gear)
    {
        Terminal T(string name) => wiring.TerminalOf(gear, name)!;
        switch (gear)
        {
            case Speaker s:
                return Enumerable.Range(1, s.CoilCount).Select(n => new NetworkPart.CoilPart(T($"coil.{Text(n)}.+"), T($"coil.{Text(n)}.-"), s, n));
            case LoadResistor { Channels: 2, Resistance: { } ohms }:
                return [new NetworkPart.Resistance(T("left.+"), T("left.-"), ohms.Value), new NetworkPart.Resistance(T("right.+"), T("right.-"), ohms.Value)];
            case LoadResistor { Resistance: { } ohms }:
                return [new NetworkPart.Resistance(T("1"), T("2"), ohms.Value)];
            case PassiveCrossover x:
                return x.Outputs.Select(o => new NetworkPart.Filter(T("in.+"), T(o.Name.Value + ".+"), T("in.-"), T(o.Name.Value + ".-"), o));
            case LevelAdapter a:
                return TerminalShape.ChannelNames(a.Channels).SelectMany(n => InputsOf(a, n));
            case Amplifier amp when LoadOf(amp) is { } load:
                return amp.Terminals.First(t => t.Name == "in").Members.Select(m => new NetworkPart.Resistance(T(m.Name + ".+"), T(m.Name + ".-"), load))
                    .Where(p => wiring.ConductorsAt[p.A.Index].Any(c => IsSpeaker(c.Other(p.A))));
            default:
                return [];
        }
    }

    /// <summary>What an adapter's input presents: its own load, and beside it what it lets through from the input behind it.</summary>
    private IEnumerable<NetworkPart> InputsOf(LevelAdapter adapter, string channel)
    {
        var (plus, minus) = (wiring.TerminalOf(adapter, $"in.{channel}.+")!, wiring.TerminalOf(adapter, $"in.{channel}.-")!);
        if (adapter.Load is { } own)
        {
            yield return new NetworkPart.Resistance(plus, minus, own.Value);
        }

        if (adapter.Passes.Any(p => p.Value == "load"))
        {
            var output = wiring.TerminalOf(adapter, $"out.{channel}.+")!;
            foreach (var behind in wiring.NetOf[output.Index].Terminals.Where(t => t.Gear is Amplifier && t.Shape.Flow == TerminalFlow.In && t.Side == '+'))
            {
                if (LoadOf((Amplifier)behind.Gear!) is { } load)
                {
                    yield return new NetworkPart.Resistance(plus, minus, load);
                }
            }
        }
    }

    private static Ohms? LoadOf(Amplifier amp) => amp.Settings.InputLoad?.Value == "on" && amp.InputLoad is { Value.Value: > 0 } load ? load.Value : null;

    private static string Text(int n) => n.ToString(System.Globalization.CultureInfo.InvariantCulture);
}
