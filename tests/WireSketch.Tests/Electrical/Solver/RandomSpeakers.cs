using System.Globalization;
using System.Numerics;
using System.Text;
using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

/// <summary>
/// Generates a series-parallel network of coils, capacitors and inductors with bridges across it, at a frequency of its own.
/// </summary>
internal sealed class RandomSpeakers
{
    private readonly Random random;
    private readonly List<(char Kind, int A, int B, double Value)> parts = [];
    private int nodes = 2;

    public RandomSpeakers(int seed)
    {
        random = new(seed);
        Hertz = Math.Round(20 * Math.Pow(1000, random.NextDouble()), 3);
        Fill(1, 0, 2 + random.Next(3));
        for (var i = 0; i < random.Next(4); i++)
        {
            var (a, b) = (random.Next(nodes), random.Next(nodes));
            if (a != b)
            {
                Part(a, b);
            }
        }
    }

    private double Hertz { get; }

    /// <summary>Volts of every node with 1 V at node 1, then the current drawn.</summary>
    public Complex[] Solve()
    {
        var circuit = new ComplexCircuit(nodes, Hertz);
        foreach (var (kind, a, b, value) in parts)
        {
            _ = kind switch
            {
                'R' => circuit.Resistor(a, b, value),
                'L' => circuit.Inductor(a, b, value),
                _ => circuit.Capacitor(a, b, value),
            };
        }

        var source = circuit.Source(1, 0, Complex.One);
        var (volts, amps) = circuit.Solve();
        var impedance = circuit.ImpedanceBetween(1, 0);
        Assert.NotNull(impedance);
        return [.. volts.Skip(2), -amps[source]];
    }

    /// <summary>A deck that prints the same values, numbered.</summary>
    public string Deck()
    {
        string Name(int n) => n == 0 ? "0" : string.Create(CultureInfo.InvariantCulture, $"n{n}");
        var deck = new StringBuilder("* speaker network\nV1 n1 0 dc 0 ac 1\n");
        for (var i = 0; i < parts.Count; i++)
        {
            var (kind, a, b, value) = parts[i];
            deck.Append(CultureInfo.InvariantCulture, $"{kind}{i} {Name(a)} {Name(b)} {value:R}\n");
        }

        // A node that hangs on capacitors alone has no operating point at zero frequency.
        for (var n = 2; n < nodes; n++)
        {
            deck.Append(CultureInfo.InvariantCulture, $"Rz{n} {Name(n)} 0 1e15\n");
        }

        deck.Append(CultureInfo.InvariantCulture, $".control\nset numdgt=15\nac lin 1 {Hertz:R} {Hertz:R}\n");
        for (var n = 2; n <= nodes; n++)
        {
            var (q, what) = (n - 2, n < nodes ? $"v({Name(n)})" : "-i(v1)");
            deck.Append(CultureInfo.InvariantCulture, $"let q{q}r = real({what})\nlet q{q}i = imag({what})\nprint q{q}r\nprint q{q}i\n");
        }

        return deck.Append("quit\n.endc\n.end\n").ToString();
    }

    private void Fill(int a, int b, int depth)
    {
        if (depth == 0)
        {
            Part(a, b);
            return;
        }

        var ways = 1 + random.Next(2);
        for (var w = 0; w < ways; w++)
        {
            var middle = random.Next(3) == 0 ? -1 : nodes++;
            if (middle < 0)
            {
                Fill(a, b, depth - 1);
            }
            else
            {
                Fill(a, middle, depth - 1);
                Fill(middle, b, depth - 1);
            }
        }
    }

    private void Part(int a, int b)
    {
        var choice = random.Next(6);
        if (choice == 4)
        {
            // A winding has resistance; without it, rings of inductors have no definite current.
            var middle = nodes++;
            parts.Add(('L', a, middle, 1e-4 + (random.NextDouble() * 2e-3)));
            parts.Add(('R', middle, b, 0.05 + random.NextDouble()));
        }
        else
        {
            parts.Add(choice == 5
                ? ('C', a, b, 1e-6 + (random.NextDouble() * 1e-4))
                : ('R', a, b, choice == 0 ? 0.01 + (0.1 * random.NextDouble()) : 2 + (random.NextDouble() * 6)));
        }
    }
}
