using WireSketch.Topology;

namespace WireSketch.Electrical.Solver;

/// <summary>
/// The check before solving: which nodes are one (joined by nothing but metal), and which parts have no way to the reference.
/// A floating part gets a node of its own to count from; a load that hangs between two parts has no way back and takes nothing.
/// </summary>
internal sealed class CircuitIslands
{
    public CircuitIslands(DcCircuit circuit)
    {
        var count = circuit.Nodes;
        Merged = new(count);
        var joined = new UnionFind(count);
        foreach (var b in circuit.Branches)
        {
            if (b.IsShort)
            {
                Merged.Join(b.A, b.B);
            }

            if (b.Conducts)
            {
                joined.Join(b.A, b.B);
            }
        }

        PartOf = new int[count];
        Floats = new bool[count];
        var home = joined.Root(0);
        for (var i = 0; i < count; i++)
        {
            PartOf[i] = joined.Root(i);
            Floats[i] = PartOf[i] != home;
        }

        // Volts of a floating part count from the minus of its first source.
        var pin = new int[count];
        Array.Fill(pin, -1);
        pin[home] = Merged.Root(0);
        foreach (var b in circuit.Branches)
        {
            if (b.Drives && pin[PartOf[b.A]] < 0)
            {
                pin[PartOf[b.A]] = Merged.Root(b.B);
            }
        }

        Unknown = new int[count];
        var next = 0;
        for (var i = 0; i < count; i++)
        {
            if (pin[PartOf[i]] < 0)
            {
                pin[PartOf[i]] = Merged.Root(i);
            }

            var root = Merged.Root(i);
            Unknown[i] = root != i ? Unknown[root] : root == pin[PartOf[i]] ? -1 : next++;
        }

        Unknowns = next;
    }

    public UnionFind Merged { get; }

    /// <summary>By node: a name for the part it is in.</summary>
    public int[] PartOf { get; }

    /// <summary>By node: no conducting way leads to the reference.</summary>
    public bool[] Floats { get; }

    /// <summary>By node: its place among the unknown voltages; −1 where it is what volts are counted from.</summary>
    public int[] Unknown { get; }

    public int Unknowns { get; }
}
