using System.Collections.Immutable;
using WireSketch.Language;
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
        var links = wiring.Links.Where(l =>
            l.Kind == ConnectionKind.Joint && (IsSpeaker(l.A) || IsSpeaker(l.B) || l.A.Role == TerminalRole.Any))
            .ToArray();
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
        foreach (var root in conductorsOf.Select(g => g.Key)
            .Concat(linksOf.Select(g => g.Key))
            .Concat(partsOf.Select(g => g.Key))
            .Distinct())
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

    private IEnumerable<NetworkPart> PartsOf(Gear gear) => gear.SpeakerParts.SelectMany(p => PartsOf(gear, p));

    private IEnumerable<NetworkPart> PartsOf(Gear gear, SpeakerPart part)
    {
        switch (part)
        {
            case VoiceCoil coil:
                var (plus, minus) = Sides(gear, coil.Terminal);
                yield return new NetworkPart.CoilPart(plus, minus, coil.Speaker, coil.Number);
                break;
            case ResistorPart { Second: { } second } resistor:
                yield return new NetworkPart.Resistance(wiring.At(gear, resistor.First), wiring.At(gear, second), resistor.Resistance);
                break;
            case ResistorPart resistor:
                yield return Across(gear, resistor.First, resistor.Resistance);
                break;
            case CrossoverWay way:
                var ((inPlus, inMinus), (outPlus, outMinus)) = (Sides(gear, way.Input), Sides(gear, way.Output));
                yield return new NetworkPart.Filter(inPlus, outPlus, inMinus, outMinus, way.Way);
                break;
            case InputLoadPart load:
                var own = Across(gear, load.Input, load.Load);
                if (!load.OnlyFromSpeakerLevel || wiring.ConductorsAt[own.A.Index].Any(c => IsSpeaker(c.Other(own.A))))
                {
                    yield return own;
                }

                break;

            // What is wired behind an adapter that lets loads through appears at its input.
            case PassedLoadPart passed:
                foreach (var behind in wiring.NetOf[wiring.PlusOf(gear, passed.Output).Index].Terminals.Where(
                    t => t.Gear is not null && t.Shape.Flow == TerminalFlow.In && t.Side == '+'))
                {
                    foreach (var load in behind.Gear!.SpeakerParts.OfType<InputLoadPart>().Where(l => l.Input == behind.Shape))
                    {
                        yield return Across(gear, passed.Input, load.Load);
                    }
                }

                break;
        }
    }

    private (Terminal Plus, Terminal Minus) Sides(Gear gear, TerminalShape pair) => (wiring.PlusOf(gear, pair), wiring.MinusOf(gear, pair));

    private NetworkPart.Resistance Across(Gear gear, TerminalShape pair, Ohms ohms)
    {
        var (plus, minus) = Sides(gear, pair);
        return new(plus, minus, ohms);
    }
}
