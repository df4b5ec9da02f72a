using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Speakers;

/// <summary>A coil as an element of a network.</summary>
internal sealed record CoilElement(Speaker Speaker, int Number, Terminal Plus, Terminal Minus, Ohms Impedance);

/// <summary>
/// Everything that hangs on one output: conductors, coils and what joins them, solved by nodal analysis with the output's
/// minus side as reference and one volt at its plus side. Coils count as resistances of their nominal impedance.
/// </summary>
internal sealed class CoilNetwork
{
    /// <summary>Stands for a conductor of no resistance; far below any coil, far above rounding.</summary>
    private const double AlmostNothing = 1e-6;

    private readonly Wiring wiring;
    private readonly Func<Conductor, Ohms> resistance;
    private readonly Dictionary<int, int> nodes = [];
    private readonly List<CoilElement> coils = [];
    private readonly List<(int A, int B, double Ohms)> wires = [];

    private CoilNetwork(Wiring wiring, Func<Conductor, Ohms> resistance)
    {
        this.wiring = wiring;
        this.resistance = resistance;
    }

    public IReadOnlyList<CoilElement> Coils => coils;

    /// <summary>All terminals of the network.</summary>
    public ImmutableHashSet<int> Terminals => [.. nodes.Keys];

    /// <summary>Walks from an output through conductors, joints and coils.</summary>
    public static CoilNetwork From(Wiring wiring, Terminal plus, Terminal minus, Func<Conductor, Ohms> resistance)
    {
        var network = new CoilNetwork(wiring, resistance);
        network.Walk([plus, minus]);
        return network;
    }

    /// <summary>The load between two terminals; null if no current can flow between them.</summary>
    /// <param name="plus">The side that is at one volt.</param>
    /// <param name="minus">The reference.</param>
    /// <param name="wired">With the resistance of the wires; without, the coils alone.</param>
    public (double Ohms, ImmutableArray<double> CoilVolts)? Solve(Terminal plus, Terminal minus, bool wired)
    {
        var reference = nodes[minus.Index];
        var driven = nodes[plus.Index];
        if (reference == driven)
        {
            return (0, [.. coils.Select(_ => 0.0)]);
        }

        var n = nodes.Count;
        var g = new double[n, n];
        void Stamp(int a, int b, double siemens)
        {
            g[a, a] += siemens;
            g[b, b] += siemens;
            g[a, b] -= siemens;
            g[b, a] -= siemens;
        }

        foreach (var (a, b, ohms) in wires)
        {
            Stamp(a, b, 1 / Math.Max(AlmostNothing, wired ? ohms : 0));
        }

        foreach (var coil in coils)
        {
            Stamp(nodes[coil.Plus.Index], nodes[coil.Minus.Index], 1 / coil.Impedance.Value);
        }

        var volts = Dense.Potentials(g, reference, driven);
        if (volts is null)
        {
            return null;
        }

        double current = 0;
        for (var j = 0; j < n; j++)
        {
            current += g[driven, j] * volts[j];
        }

        // What the regularisation of floating ends lets through is no load.
        return current < 1e-7 ? null : (1 / current, [.. coils.Select(c => volts[nodes[c.Plus.Index]] - volts[nodes[c.Minus.Index]])]);
    }

    private void Walk(IEnumerable<Terminal> starts)
    {
        var queue = new Queue<Terminal>();
        var seen = new HashSet<(int, string)>();
        void Meet(Terminal t)
        {
            if (nodes.TryAdd(t.Index, nodes.Count))
            {
                queue.Enqueue(t);
            }
        }

        foreach (var t in starts)
        {
            Meet(t);
        }

        while (queue.TryDequeue(out var here))
        {
            foreach (var conductor in wiring.ConductorsAt[here.Index])
            {
                Meet(conductor.Other(here));
                if (seen.Add((conductor.Index, "c")))
                {
                    wires.Add((nodes[conductor.From.Index], nodes[conductor.To.Index], resistance(conductor).Value));
                }
            }

            foreach (var link in wiring.LinksAt[here.Index].Where(l => l.Kind is LinkKind.Joint or LinkKind.Fuse or LinkKind.Breaker or LinkKind.Switch))
            {
                Meet(link.Other(here));
                if (seen.Add((link.Index, "l")))
                {
                    wires.Add((nodes[link.A.Index], nodes[link.B.Index], 0));
                }
            }

            if (here.Gear is Speaker speaker && here.Side != ' ')
            {
                var other = wiring.TerminalsById[here.Id[..^1] + (here.Side == '+' ? "-" : "+")];
                Meet(other);
                if (here.Side == '+' || !nodes.ContainsKey(other.Index) || !seen.Contains((other.Index, "s")))
                {
                    var plus = here.Side == '+' ? here : other;
                    if (seen.Add((plus.Index, "s")))
                    {
                        var number = int.Parse(plus.Shape.Name["coil.".Length..], System.Globalization.CultureInfo.InvariantCulture);
                        coils.Add(new(speaker, number, plus, here.Side == '+' ? other : here, speaker.CoilImpedance));
                    }
                }
            }
            else if (here.Gear is PassiveCrossover crossover && here.Side != ' ')
            {
                PassThrough(crossover, here, Meet, seen);
            }
        }
    }

    /// <summary>A crossover that gives bands, not values, passes its band unchanged: each output sees the input.</summary>
    private void PassThrough(PassiveCrossover crossover, Terminal here, Action<Terminal> meet, HashSet<(int, string)> seen)
    {
        foreach (var output in crossover.Outputs)
        {
            foreach (var side in new[] { '+', '-' })
            {
                var into = wiring.TerminalsById[$"{crossover.Id}.in.{side}"];
                var from = wiring.TerminalsById[$"{crossover.Id}.{output.Name.Value}.{side}"];
                if (here.Side != side || (here.Index != into.Index && here.Index != from.Index))
                {
                    continue;
                }

                meet(into);
                meet(from);
                if (seen.Add((from.Index, "x")))
                {
                    wires.Add((nodes[into.Index], nodes[from.Index], 0));
                }
            }
        }
    }
}
