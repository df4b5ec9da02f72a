using System.Collections.Immutable;
using System.Numerics;
using WireSketch.Electrical.Solver;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Speakers;

/// <summary>What stands between two terminals of a speaker network inside a device.</summary>
internal abstract record NetworkPart(Terminal A, Terminal B)
{
    /// <summary>A coil of a driver.</summary>
    internal sealed record CoilPart(Terminal A, Terminal B, Speaker Speaker, int Number) : NetworkPart(A, B);

    /// <summary>A resistance that is no coil: a load resistor, the input of an adapter or amplifier.</summary>
    internal sealed record Resistance(Terminal A, Terminal B, Ohms Ohms) : NetworkPart(A, B);

    /// <summary>One output of a passive crossover; <c>A</c> is its input's plus, <c>B</c> the output's plus.</summary>
    internal sealed record Filter(Terminal A, Terminal B, Terminal Common, Terminal OutCommon, CrossoverOutput Output) : NetworkPart(A, B);
}

/// <summary>How a network is looked at.</summary>
internal enum NetworkView
{
    /// <summary>Coils alone: wires without resistance.</summary>
    Coils,

    /// <summary>With the wires as they are.</summary>
    Wires,

    /// <summary>Which way coils move: filters let everything pass.</summary>
    Polarity,

    /// <summary>As an ohm meter sees it: wires as they are, coils at the resistance of their winding.</summary>
    Meter,
}

/// <summary>What one volt between two terminals does in a network.</summary>
/// <param name="Impedance">Load seen by it; null if no current flows.</param>
/// <param name="Coils">Current through each coil, from its plus to its minus.</param>
internal sealed record NetworkSolution(Complex? Impedance, ImmutableArray<(NetworkPart.CoilPart Coil, Complex Amps)> Coils);

/// <summary>Coils, crossovers and wires that hang together.</summary>
internal sealed class SpeakerNetwork(
    ImmutableArray<Conductor> conductors,
    ImmutableArray<InternalConnection> links,
    ImmutableArray<NetworkPart> parts,
    Func<Conductor, Ohms> resistance)
{
    /// <summary>The frequency of resistive networks does not matter; this one is the usual test tone.</summary>
    private const double Tone = 1000;

    public ImmutableArray<NetworkPart> Parts => parts;

    /// <summary>The same network with another part, or nothing, in a part's place.</summary>
    public SpeakerNetwork With(NetworkPart part, NetworkPart? instead) =>
        new(conductors, links, [.. parts.Select(p => ReferenceEquals(p, part) ? instead : p).OfType<NetworkPart>()], resistance);

    /// <summary>Frequencies to look at: one, or the third-octave bands where a crossover makes a difference.</summary>
    public IEnumerable<double> Frequencies =>
        parts.Any(p => p is NetworkPart.Filter) ? Tables.ThirdOctave.Bands.Select(b => b.Middle.Value) : [Tone];

    /// <summary>Whether nothing but wire and solid metal lies between two terminals.</summary>
    public bool Touches(Terminal a, Terminal b) => TerminalGraph.Of(conductors, links).From(a).Terminals().Any(t => t.Index == b.Index);

    public NetworkSolution Drive(Terminal plus, Terminal minus, NetworkView view, double hertz)
    {
        var nodes = new Dictionary<int, int>();
        int Node(Terminal t) => nodes.TryGetValue(t.Index, out var n) ? n : nodes[t.Index] = nodes.Count;
        var circuit = new ComplexCircuit(Count(plus, minus), hertz);
        Node(minus);
        Node(plus);
        foreach (var c in conductors)
        {
            circuit.Resistor(Node(c.From), Node(c.To), view is NetworkView.Wires or NetworkView.Meter ? resistance(c).Value : 0);
        }

        foreach (var l in links)
        {
            circuit.Resistor(Node(l.A), Node(l.B), 0);
        }

        var coils = new List<(NetworkPart.CoilPart Coil, int Part)>();
        foreach (var part in parts)
        {
            switch (part)
            {
                case NetworkPart.CoilPart coil:
                    coils.Add((coil, circuit.Resistor(Node(coil.A), Node(coil.B), OhmsOf(coil, view).Value)));
                    break;
                case NetworkPart.Resistance r:
                    circuit.Resistor(Node(r.A), Node(r.B), r.Ohms.Value);
                    break;
                case NetworkPart.Filter f:
                    circuit.Resistor(Node(f.Common), Node(f.OutCommon), 0);
                    AddFilter(circuit, f, Node, view, hertz);
                    break;
            }
        }

        var source = circuit.Source(Node(plus), Node(minus), Complex.One);
        var (_, amps) = circuit.Solve();
        var drawn = -amps[source];
        return new(drawn.Magnitude < 1e-9 ? null : 1 / drawn, [.. coils.Select(c => (c.Coil, amps[c.Part]))]);
    }

    private static Ohms OhmsOf(NetworkPart.CoilPart coil, NetworkView view) =>
        view == NetworkView.Meter && coil.Speaker.DcResistance is { } winding ? winding.Value : coil.Speaker.CoilImpedance;

    private static void AddFilter(
        ComplexCircuit circuit, NetworkPart.Filter filter, Func<Terminal, int> node, NetworkView view, double hertz)
    {
        var output = filter.Output;
        if (output.Parts.IsEmpty || view == NetworkView.Polarity)
        {
            if (view == NetworkView.Polarity || Passes(output, hertz))
            {
                circuit.Resistor(node(filter.A), node(filter.B), 0);
            }

            return;
        }

        var at = node(filter.A);
        var last = LastSeries(output.Parts);
        for (var i = 0; i < output.Parts.Length; i++)
        {
            var part = output.Parts[i];
            var to = !part.Series ? node(filter.Common) : i == last ? node(filter.B) : circuit.NewNode();
            if (part.Capacitor is { } c)
            {
                circuit.Capacitor(at, to, c.Value.Value);
            }
            else if (part.Inductor is { } l)
            {
                circuit.Inductor(at, to, l.Value.Value, part.Resistor?.Value.Value ?? 0);
            }
            else
            {
                circuit.Resistor(at, to, part.Resistor?.Value.Value ?? 0);
            }

            at = part.Series ? to : at;
        }

        if (last < 0)
        {
            circuit.Resistor(at, node(filter.B), 0);
        }
    }

    private static int LastSeries(ImmutableArray<CrossoverPart> parts)
    {
        var last = parts.Length - 1;
        while (last >= 0 && !parts[last].Series)
        {
            last--;
        }

        return last;
    }

    private static bool Passes(CrossoverOutput output, double hertz) =>
        (output.HighPass is not { } high || hertz >= high.Value.Value)
        && (output.LowPass is not { } low || hertz <= low.Value.Value)
        && (output.Band is not { } band || (hertz >= band.Value.Least.Value && hertz <= band.Value.Most.Value));

    private int Count(Terminal plus, Terminal minus) =>
        conductors.SelectMany(c => new[] { c.From.Index, c.To.Index })
            .Concat(links.SelectMany(l => new[] { l.A.Index, l.B.Index }))
            .Concat(parts.SelectMany(p =>
                p is NetworkPart.Filter f ? new[] { f.A.Index, f.B.Index, f.Common.Index, f.OutCommon.Index } : [p.A.Index, p.B.Index]))
            .Append(plus.Index).Append(minus.Index).Distinct().Count();
}
