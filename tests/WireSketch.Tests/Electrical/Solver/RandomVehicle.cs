using WireSketch.Electrical.Solver;

namespace WireSketch.Tests.Electrical.Solver;

/// <summary>
/// Generates the supply network of an invented vehicle: batteries, alternator, body, cable trees, loads of three kinds, sometimes a dead
/// short.
/// </summary>
internal sealed class RandomVehicle
{
    private readonly Random random;
    private readonly List<(int Plus, int Minus, double Watts)> powers = [];
    private readonly List<Action<DcCircuit>> made = [];
    private readonly List<int> body = [];
    private int nodes = 1;

    /// <param name="seed">The same network for the same seed.</param>
    /// <param name="size">About so many nodes.</param>
    public RandomVehicle(int seed, int size)
    {
        random = new(seed);
        body.Add(0);
        for (var i = 0; i < 1 + random.Next(5); i++)
        {
            var point = Node();
            Resistor(point, body[random.Next(body.Count)], Between(0.0002, 0.002));
            body.Add(point);
        }

        var rails = new List<int>();
        var batteries = 1 + random.Next(3);
        for (var i = 0; i < batteries; i++)
        {
            var (plus, minus) = (Node(), Node());
            var (volts, ohms) = (Between(12.2, 12.9), Between(0.002, 0.012));
            made.Add(random.Next(2) == 0 ? c => c.Source(plus, minus, volts, ohms) : c => c.Battery(plus, minus, volts, ohms, 20 * ohms));
            Resistor(minus, Body(), Between(0.0003, 0.002));
            if (rails.Count > 0)
            {
                Link(rails[random.Next(rails.Count)], plus);
            }

            rails.Add(plus);
        }

        if (random.Next(2) == 0)
        {
            var node = Node();
            var limit = Between(40, 200);
            made.Add(c => c.Regulated(node, 0, 14.2, 0.001, limit));
            Resistor(node, rails[0], Between(0.0005, 0.003));
        }

        Grow(rails, size);
        if (random.Next(5) == 0)
        {
            // A short at the end of a thin wire: a large current beside loads that still work.
            var fault = Node();
            Resistor(rails[0], fault, Between(0.05, 0.2));
            Resistor(fault, Body(), Between(0.0001, 0.01));
        }
    }

    /// <summary>The circuit with all powers scaled alike.</summary>
    public DcCircuit Make(double scale)
    {
        var circuit = new DcCircuit(nodes);
        foreach (var add in made)
        {
            add(circuit);
        }

        foreach (var (plus, minus, watts) in powers)
        {
            circuit.Power(plus, minus, Math.Round(watts * scale, 4));
        }

        return circuit;
    }

    private void Grow(List<int> rails, int size)
    {
        var open = new List<int>(rails);
        while (nodes < size)
        {
            var from = open[random.Next(open.Count)];
            var at = from;
            if (random.Next(3) == 0)
            {
                var joint = Node();
                Resistor(at, joint, random.Next(3) == 0 ? 0 : Between(0.0005, 0.003));
                at = joint;
            }

            var end = Node();
            Resistor(at, end, Between(0.001, 0.05));
            open.Add(end);
            if (random.Next(8) == 0 && open.Count > 4)
            {
                Resistor(end, open[random.Next(open.Count - 1)], Between(0.002, 0.05));
            }

            if (random.Next(2) == 0)
            {
                Load(end, size);
            }
        }
    }

    private void Load(int plus, int size)
    {
        var minus = Body();
        if (random.Next(2) == 0)
        {
            var own = Node();
            Resistor(own, minus, Between(0.0005, 0.02));
            minus = own;
        }

        var watts = Between(5, 3000.0 / Math.Max(20, size));
        switch (random.Next(4))
        {
            case 0:
                Resistor(plus, minus, Math.Round(144 / watts, 4));
                break;
            case 1:
                made.Add(c => c.Current(plus, minus, Math.Round(watts / 12, 4), 1));
                break;
            default:
                powers.Add((plus, minus, 3 * watts));
                break;
        }
    }

    private void Link(int a, int b)
    {
        if (random.Next(4) == 0)
        {
            made.Add(c => c.Diode(a, b, 0.6, 0.003));
        }
        else
        {
            Resistor(a, b, Between(0.002, 0.01));
        }
    }

    private int Body() => body[random.Next(body.Count)];

    private int Node() => nodes++;

    private void Resistor(int a, int b, double ohms) => made.Add(c => c.Resistor(a, b, ohms));

    /// <summary>With few digits: the simulator keeps ten of the numbers in an expression.</summary>
    private double Between(double low, double high) => Math.Round(low + (random.NextDouble() * (Math.Max(low, high) - low)), 5);
}
