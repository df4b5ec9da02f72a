using System.Numerics;
using WireSketch.Topology;

namespace WireSketch.Electrical.Solver;

/// <summary>A circuit at one frequency, for speaker networks. Node 0 is the reference. Voltages and currents are phasors.</summary>
internal sealed class ComplexCircuit(int nodes, double hertz)
{
    private readonly List<Part> parts = [];

    private enum PartKind
    {
        Impedance,
        Source,
        CurrentSource,
    }

    public int Nodes { get; private set; } = nodes;

    private double Radians => 2 * Math.PI * hertz;

    public int NewNode() => Nodes++;

    public int Resistor(int a, int b, double ohms) => Add(new(PartKind.Impedance, a, b, ohms));

    public int Inductor(int a, int b, double henries, double windingOhms = 0) =>
        Add(new(PartKind.Impedance, a, b, new(windingOhms, Radians * henries)));

    /// <summary>A capacitor; at zero frequency it conducts nothing.</summary>
    public int Capacitor(int a, int b, double farads) =>
        Add(new(PartKind.Impedance, a, b, hertz * farads == 0 ? new(double.PositiveInfinity, 0) : new(0, -1 / (Radians * farads))));

    /// <summary>A voltage without inner resistance.</summary>
    public int Source(int plus, int minus, Complex volts) => Add(new(PartKind.Source, plus, minus, volts));

    /// <summary>A current that leaves the circuit at one node and comes back at another.</summary>
    public int CurrentSource(int from, int to, Complex amps) => Add(new(PartKind.CurrentSource, from, to, amps));

    /// <summary>Volts by node and amps from A to B by part. A part that floats is counted from one of its nodes.</summary>
    public (Complex[] Volts, Complex[] Amps) Solve()
    {
        var pins = Pins();
        var unknown = new int[Nodes];
        var size = 0;
        for (var i = 0; i < Nodes; i++)
        {
            unknown[i] = pins[i] ? -1 : size++;
        }

        // Sources and impedances of nothing have their current as an unknown.
        var own = new int[parts.Count];
        for (var i = 0; i < parts.Count; i++)
        {
            own[i] = parts[i].Kind == PartKind.Source || (parts[i].Kind == PartKind.Impedance && parts[i].Value == Complex.Zero)
                ? size++
                : -1;
        }

        var system = new ComplexSystem(size);
        for (var i = 0; i < parts.Count; i++)
        {
            var (a, b) = (unknown[parts[i].A], unknown[parts[i].B]);
            if (own[i] >= 0)
            {
                system.Add(a, own[i], 1);
                system.Add(b, own[i], -1);
                system.Add(own[i], a, 1);
                system.Add(own[i], b, -1);
                system.AddSide(own[i], parts[i].Kind == PartKind.Source ? parts[i].Value : 0);
            }
            else if (parts[i].Kind == PartKind.CurrentSource)
            {
                system.AddSide(a, -parts[i].Value);
                system.AddSide(b, parts[i].Value);
            }
            else if (parts[i].Conducts)
            {
                var y = 1 / parts[i].Value;
                system.Add(a, a, y);
                system.Add(b, b, y);
                system.Add(a, b, -y);
                system.Add(b, a, -y);
            }
        }

        var x = system.Solve();
        var volts = unknown.Select(u => u < 0 ? Complex.Zero : x[u]).ToArray();
        var amps = parts.Select((p, i) => own[i] >= 0 ? x[own[i]]
            : p.Kind == PartKind.CurrentSource ? p.Value
            : p.Conducts ? (volts[p.A] - volts[p.B]) / p.Value : Complex.Zero).ToArray();
        return (volts, amps);
    }

    /// <summary>Impedance between two nodes, all sources of the circuit at rest; null if nothing joins them.</summary>
    public Complex? ImpedanceBetween(int a, int b)
    {
        var joined = Joined(Conducting);
        if (joined.Root(a) != joined.Root(b))
        {
            return null;
        }

        var probe = new ComplexCircuit(Nodes, hertz);
        foreach (var p in parts)
        {
            probe.Add(p.Kind == PartKind.Impedance ? p : p with { Value = 0 });
        }

        probe.CurrentSource(b, a, 1);
        var (volts, _) = probe.Solve();
        return volts[a] - volts[b];
    }

    private static bool Conducting(Part p) => p.Conducts;

    private UnionFind Joined(Func<Part, bool> by)
    {
        var joined = new UnionFind(Nodes);
        foreach (var p in parts.Where(by))
        {
            joined.Join(p.A, p.B);
        }

        return joined;
    }

    private bool[] Pins()
    {
        var joined = Joined(Conducting);
        var pins = new bool[Nodes];
        for (var i = 0; i < Nodes; i++)
        {
            pins[i] = joined.Root(i) == i;
        }

        return pins;
    }

    private int Add(Part part)
    {
        parts.Add(part);
        return parts.Count - 1;
    }

    private readonly record struct Part(PartKind Kind, int A, int B, Complex Value)
    {
        public bool Conducts => Kind == PartKind.Source || (Kind == PartKind.Impedance && double.IsFinite(Value.Real));
    }
}
