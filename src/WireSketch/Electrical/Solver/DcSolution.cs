namespace WireSketch.Electrical.Solver;

/// <summary>The answer to a direct-current circuit: a closed choice.</summary>
internal abstract record DcSolution
{
    private DcSolution()
    {
    }

    /// <summary>Volts against the reference by node; in a floating part, against a node of that part.</summary>
    public required double[] Volts { get; init; }

    /// <summary>Amps from A to B by branch.</summary>
    public required double[] Amps { get; init; }

    /// <summary>By node: no conducting way leads to the reference.</summary>
    public required bool[] Floats { get; init; }

    /// <summary>
    /// Power loads without a voltage to work on: they hang between parts that are not joined, are reversed, or no source feeds them. They
    /// take nothing.
    /// </summary>
    public required IReadOnlyList<int> Dead { get; init; }

    public required int Iterations { get; init; }

    /// <summary>Largest sum of currents at a node over the currents there, or over 1e-6 of the largest of all if that is more.</summary>
    public required double Residual { get; init; }

    /// <summary>The operating point: the stable one, of the higher volts.</summary>
    public sealed record Found : DcSolution;

    /// <summary>There is none. Volts and amps are those at the last share of all power loads that can be supplied.</summary>
    /// <param name="Scale">That share.</param>
    /// <param name="Loads">Power loads whose volts collapse there, the worst first.</param>
    /// <param name="LimitingBranch">The resistance whose loss grows fastest there; -1 if there is none.</param>
    public sealed record Starved(double Scale, IReadOnlyList<int> Loads, int LimitingBranch) : DcSolution;
}
