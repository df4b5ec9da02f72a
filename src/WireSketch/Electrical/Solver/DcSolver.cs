namespace WireSketch.Electrical.Solver;

/// <summary>Finds the operating point of a circuit, or how far it can be supplied.</summary>
internal static class DcSolver
{
    /// <summary>Below this a power load is taken to be without supply.</summary>
    private const double DeadVolts = 1e-3;

    public static DcAnswer Solve(DcCircuit circuit)
    {
        var parts = new Parts(circuit);
        var equations = new NodeEquations(circuit, parts);
        var newton = new GuardedNewton(equations);
        var volts = Begin(circuit, parts);
        var dead = new List<int>();
        for (var i = 0; i < equations.Branches; i++)
        {
            if (equations.Branch(i).Kind == BranchKind.Power && !equations.IsActive(i))
            {
                dead.Add(i);
            }
        }

        if (!newton.Run(volts, 0))
        {
            return Starve(circuit, parts, equations, newton, volts, 0, dead, volts, 0);
        }

        for (var i = 0; i < equations.Branches; i++)
        {
            if (equations.Branch(i).Kind == BranchKind.Power && equations.IsActive(i) && equations.Across(i, volts) < DeadVolts)
            {
                equations.Drop(i);
                dead.Add(i);
            }
        }

        dead.Sort();
        if (newton.Run(volts, 1))
        {
            return Find(circuit, parts, equations, newton, volts, dead);
        }

        // The last share of all powers that can be supplied, by halving; every answer starts from one of less power, which lies above it.
        var (low, high) = (0.0, 1.0);
        var exact = equations.Unknowns < 2000 ? 1e-11 : 1e-5;
        var (scaleBefore, before) = (0.0, volts);
        while (high - low > exact)
        {
            if (high - low > 1e-4)
            {
                (scaleBefore, before) = (low, (double[])volts.Clone());
            }

            var middle = (low + high) / 2;
            if (newton.Run(volts, middle))
            {
                low = middle;
            }
            else
            {
                high = middle;
            }
        }

        // Step by step the whole power may be reached after all.
        return newton.Run(volts, 1)
            ? Find(circuit, parts, equations, newton, volts, dead)
            : Starve(circuit, parts, equations, newton, volts, low, dead, before, scaleBefore);
    }

    private static DcAnswer.Found Find(DcCircuit circuit, Parts parts, NodeEquations equations, GuardedNewton newton, double[] volts, IReadOnlyList<int> dead)
    {
        var (nodes, amps) = Spread(circuit, parts, equations, volts, 1);
        return new() { Volts = nodes, Amps = amps, Floats = parts.Floats, Dead = dead, Iterations = newton.Steps, Residual = equations.Residual(volts, 1) };
    }

    /// <summary>Every node at the highest voltage of all sources: above any answer.</summary>
    private static double[] Begin(DcCircuit circuit, Parts parts)
    {
        var most = circuit.Branches.Where(b => b.Drives).Select(b => b.Value).DefaultIfEmpty(0).Max();
        var volts = new double[parts.Unknowns];
        Array.Fill(volts, most);
        return volts;
    }

    private static DcAnswer.Starved Starve(
        DcCircuit circuit, Parts parts, NodeEquations equations, GuardedNewton newton, double[] volts, double scale, IReadOnlyList<int> dead, double[] before, double scaleBefore)
    {
        var (nodes, amps) = Spread(circuit, parts, equations, volts, scale);
        var fall = new double[equations.Unknowns];
        var loads = Enumerable.Range(0, equations.Branches).Where(i => equations.IsActive(i) && equations.Branch(i).Kind == BranchKind.Power && equations.Branch(i).Value > 0).ToArray();
        foreach (var i in loads)
        {
            equations.Spread(fall, i, -equations.Branch(i).Value / equations.Across(i, before));
        }

        var worst = new List<int>();
        var limiting = -1;

        // Looked at a little before the limit: at it, the derivatives say nothing any more.
        if (equations.Factor(before, scaleBefore))
        {
            equations.Solve(fall);
            double Collapse(int i) => -equations.Across(i, fall) / equations.Across(i, before);
            var most = loads.Length == 0 ? 0 : loads.Max(Collapse);
            worst = [.. loads.Where(i => Collapse(i) >= most / 2).OrderByDescending(Collapse).ThenBy(i => i)];
            var growth = 0.0;
            for (var i = 0; i < equations.Branches; i++)
            {
                var branch = equations.Branch(i);
                if (equations.IsActive(i) && branch.Kind == BranchKind.Resistor)
                {
                    var loss = equations.Across(i, before) * equations.Across(i, fall) / branch.Ohms;
                    if (loss > growth)
                    {
                        (growth, limiting) = (loss, i);
                    }
                }
            }
        }

        return new(scale, worst, limiting)
        {
            Volts = nodes,
            Amps = amps,
            Floats = parts.Floats,
            Dead = dead,
            Iterations = newton.Steps,
            Residual = equations.Residual(volts, scale),
        };
    }

    private static (double[] Volts, double[] Amps) Spread(DcCircuit circuit, Parts parts, NodeEquations equations, double[] volts, double scale)
    {
        var nodes = new double[circuit.Nodes];
        for (var i = 0; i < nodes.Length; i++)
        {
            nodes[i] = parts.Unknown[i] < 0 ? 0 : volts[parts.Unknown[i]];
        }

        var amps = new double[equations.Branches];
        for (var i = 0; i < amps.Length; i++)
        {
            amps[i] = equations.Amps(i, volts, scale);
        }

        Shorts.Fill(circuit, parts, amps);
        return (nodes, amps);
    }
}
