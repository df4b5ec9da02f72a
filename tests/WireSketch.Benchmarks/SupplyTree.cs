using System.Globalization;
using System.Text;
using WireSketch.Electrical.Solver;

namespace WireSketch.Benchmarks;

/// <summary>
/// A random tree of supply wires from one battery, with a load of constant power at every end. The same for the same size.
/// </summary>
internal static class SupplyTree
{
    public static DcCircuit Make(int nodes)
    {
        var random = new Random(nodes);
        var circuit = new DcCircuit(nodes);
        var isEnd = new bool[nodes];
        circuit.Source(1, 0, 12.6, 0.0002);
        for (var n = 2; n < nodes; n++)
        {
            // A young tree is short: a wire leaves one of the nodes made so far.
            var from = 1 + random.Next(n - 1);
            circuit.Resistor(from, n, Math.Round(0.0002 + (random.NextDouble() * 0.002), 6));
            isEnd[n] = true;
            isEnd[from] = false;
        }

        var each = Math.Round(2500.0 / nodes, 6);
        for (var n = 2; n < nodes; n++)
        {
            if (isEnd[n])
            {
                circuit.Power(n, 0, each);
            }
        }

        return circuit;
    }

    /// <summary>The same circuit as a deck for ngspice.</summary>
    public static string Deck(DcCircuit circuit)
    {
        var deck = new StringBuilder("* supply tree\n.options reltol=1e-9 abstol=1e-12 vntol=1e-9\n");
        var i = 0;
        foreach (var b in circuit.Branches)
        {
            i++;
            deck.Append(b.Kind switch
            {
                BranchKind.Resistor => string.Create(CultureInfo.InvariantCulture, $"R{i} {b.A} {b.B} {b.Ohms:R}\n"),
                BranchKind.Power =>
                    string.Create(
                        CultureInfo.InvariantCulture,
                        $"B{i} {b.A} {b.B} I={{{b.Value:R}/max(V({b.A}),2)}}\n.nodeset v({b.A})=12\n"),
                _ => string.Create(CultureInfo.InvariantCulture, $"R{i} {b.A} e {b.Ohms:R}\nV{i} e {b.B} {b.Value:R}\n"),
            });
        }

        return deck.Append(".control\nset numdgt=15\nop\nprint v(1)\nquit\n.endc\n.end\n").ToString();
    }
}
