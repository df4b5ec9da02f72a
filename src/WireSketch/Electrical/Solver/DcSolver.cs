namespace WireSketch.Electrical.Solver;

/// <summary>Finds the operating point of a circuit, or how far it can be supplied.</summary>
internal static class DcSolver
{
    /// <summary>Below this a power load is taken to be without supply.</summary>
    private const double DeadVolts = 1e-3;

    /// <summary>How near to its limit a starved circuit is brought by halving before the limit itself is asked for.</summary>
    private const double Coarse = 1e-5;

    /// <summary>The same where there is no such limit to ask for, and the circuit is small.</summary>
    private const double Fine = 1e-11;

    public static DcSolution Solve(DcCircuit circuit)
    {
        var parts = new CircuitIslands(circuit);
        var equations = new NodeEquations(circuit, parts);
        var newton = new DampedNewton(equations);
        var volts = Begin(circuit, parts);
        var dead = new List<int>();
        for (var i = 0; i < equations.Branches; i++)
        {
            if (equations.Branch(i).Kind == BranchKind.Power && !equations.IsActive(i))
            {
                dead.Add(i);
            }
        }

        var search = new LoadBisection(newton, volts);
        if (!newton.Run(volts, 0))
        {
            return Starve(circuit, parts, equations, newton, search, dead);
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

        // Step by step the whole power may be reached after all.
        search.Narrow(Coarse);
        return newton.Run(volts, 1)
            ? Find(circuit, parts, equations, newton, volts, dead)
            : Starve(circuit, parts, equations, newton, search, dead);
    }

    private static DcSolution.Found Find(
        DcCircuit circuit, CircuitIslands parts, NodeEquations equations, DampedNewton newton, double[] volts, IReadOnlyList<int> dead)
    {
        var (nodes, amps) = Spread(circuit, parts, equations, volts, 1);
        return new()
        {
            Volts = nodes,
            Amps = amps,
            Floats = parts.Floats,
            Dead = dead,
            Iterations = newton.Steps,
            Residual = equations.Residual(volts, 1)
        };
    }

    /// <summary>Every node at the highest voltage of all sources: above any answer.</summary>
    private static double[] Begin(DcCircuit circuit, CircuitIslands parts)
    {
        var most = circuit.Branches.Where(b => b.Drives).Select(b => b.Value).DefaultIfEmpty(0).Max();
        var volts = new double[parts.Unknowns];
        Array.Fill(volts, most);
        return volts;
    }

    private static DcSolution.Starved Starve(
        DcCircuit circuit, CircuitIslands parts, NodeEquations equations, DampedNewton newton, LoadBisection search,
        IReadOnlyList<int> dead)
    {
        var (worst, limiting) = Blame(equations, search);
        var (volts, scale) = Limit(equations, search, worst);
        var (nodes, amps) = Spread(circuit, parts, equations, volts, scale);
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

    /// <summary>The loads whose volts collapse at the limit, the worst first, and the resistance whose loss grows fastest there.</summary>
    private static (IReadOnlyList<int> Worst, int Limiting) Blame(NodeEquations equations, LoadBisection search)
    {
        var before = search.VoltsBefore;
        var fall = new double[equations.Unknowns];
        int[] loads = [.. equations.Powers];
        foreach (var i in loads)
        {
            equations.Spread(fall, i, -equations.Branch(i).Value / equations.Across(i, before));
        }

        if (!equations.Factor(before, search.LowBefore))
        {
            return ([], -1);
        }

        equations.Solve(fall);
        double Collapse(int i) => -equations.Across(i, fall) / equations.Across(i, before);
        var most = loads.Length == 0 ? 0 : loads.Max(Collapse);
        var (growth, limiting) = (0.0, -1);
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

        return ([.. loads.Where(i => Collapse(i) >= most / 2).OrderByDescending(Collapse).ThenBy(i => i)], limiting);
    }

    /// <summary>The limit within the bracket, to all its digits where it is one of the power; otherwise by halving on.</summary>
    private static (double[] Volts, double Scale) Limit(NodeEquations equations, LoadBisection search, IReadOnlyList<int> worst)
    {
        if (worst.Count > 0 && new VoltageCollapseLimit(equations, worst[0]).Find(search.Volts, search.Low) is var (volts, scale)
            && scale >= search.Low - (Coarse / 100) && scale <= search.High && equations.Residual(volts, scale) <= DampedNewton.Tolerance)
        {
            return (volts, scale);
        }

        if (worst.Count > 0 && equations.Unknowns < 2000)
        {
            search.Narrow(Fine);
        }

        return (search.Volts, search.Low);
    }

    private static (double[] Volts, double[] Amps) Spread(
        DcCircuit circuit, CircuitIslands parts, NodeEquations equations, double[] volts, double scale)
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

        ZeroOhmBranches.Fill(circuit, parts, amps);
        return (nodes, amps);
    }
}
