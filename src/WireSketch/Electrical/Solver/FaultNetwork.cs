namespace WireSketch.Electrical.Solver;

/// <summary>
/// A circuit of sources and resistances in which single nodes are shorted to the reference, one after the other, by superposition.
/// </summary>
internal sealed class FaultNetwork
{
    private readonly CircuitIslands parts;
    private readonly NodeEquations equations;
    private readonly double[] open;
    private readonly bool works;
    private int shorted = -1;
    private double amps;

    public FaultNetwork(DcCircuit circuit)
    {
        parts = new(circuit);
        equations = new(circuit, parts);
        open = new double[parts.Unknowns];
        works = equations.Factor(open, 0);
        if (works)
        {
            // The network is linear: one step is the answer, a second takes off what rounding left of it.
            Step();
            Step();
        }
    }

    /// <summary>
    /// Current into a short of no resistance at a node. A part that floats is shorted to the minus of its source, which is the only way
    /// a fault current can go there.
    /// </summary>
    public double Short(int node)
    {
        var n = parts.Unknown[node];
        if (!works || n < 0)
        {
            (shorted, amps) = (-1, 0);
            return 0;
        }

        if (n != shorted)
        {
            amps = open[n] / equations.Transfer(n, n);
            shorted = n;
        }

        return amps;
    }

    /// <summary>Volts at a node with nothing shorted.</summary>
    public double OpenVolts(int node) => works && parts.Unknown[node] is >= 0 and var n ? open[n] : 0;

    private void Step()
    {
        var sums = new double[open.Length];
        equations.Sum(open, 0, sums);
        equations.Solve(sums);
        for (var n = 0; n < open.Length; n++)
        {
            open[n] -= sums[n];
        }
    }

    /// <summary>Current through a branch with the present short.</summary>
    public double Through(int branch)
    {
        if (branch < 0 || !equations.IsActive(branch))
        {
            return 0;
        }

        var (a, b) = equations.Ends(branch);
        var across = equations.Across(branch, open) - (amps * (equations.Transfer(a, shorted) - equations.Transfer(b, shorted)));
        return equations.Branch(branch).At(across, 0).Amps;
    }
}
