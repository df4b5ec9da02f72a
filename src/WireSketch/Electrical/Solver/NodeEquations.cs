namespace WireSketch.Electrical.Solver;

/// <summary>The sums of currents at the nodes and their derivatives, for given voltages.</summary>
internal sealed class NodeEquations
{
    /// <summary>Twice the step between numbers of double precision near 1, for a difference of two.</summary>
    private const double Epsilon = 4.5e-16;

    private readonly Branch[] branches;
    private readonly int[] a;
    private readonly int[] b;
    private readonly int[] slot;
    private readonly bool[] active;
    private readonly SymmetricMatrix matrix;

    public NodeEquations(DcCircuit circuit, CircuitIslands parts)
    {
        Unknowns = parts.Unknowns;
        branches = [.. circuit.Branches];
        a = new int[branches.Length];
        b = new int[branches.Length];
        slot = new int[branches.Length];
        active = new bool[branches.Length];
        var edges = new List<long>(branches.Length);
        for (var i = 0; i < branches.Length; i++)
        {
            a[i] = parts.Unknown[branches[i].A];
            b[i] = parts.Unknown[branches[i].B];
            active[i] = !branches[i].IsShort && parts.PartOf[branches[i].A] == parts.PartOf[branches[i].B];
            if (active[i] && a[i] >= 0 && b[i] >= 0 && a[i] != b[i])
            {
                edges.Add(SymmetricMatrix.Key(a[i], b[i]));
            }
        }

        edges.Sort();
        var distinct = new List<long>(edges.Count);
        foreach (var edge in edges)
        {
            if (distinct.Count == 0 || distinct[^1] != edge)
            {
                distinct.Add(edge);
            }
        }

        matrix = new(Unknowns, [.. distinct]);
        for (var i = 0; i < branches.Length; i++)
        {
            slot[i] = active[i] && a[i] >= 0 && b[i] >= 0 && a[i] != b[i] ? matrix.Slot(a[i], b[i]) : -1;
        }
    }

    public int Unknowns { get; }

    public int Branches => branches.Length;

    public Branch Branch(int i) => branches[i];

    /// <summary>Takes part in the equations.</summary>
    public bool IsActive(int i) => active[i];

    /// <summary>The power loads that take part and take anything.</summary>
    public IEnumerable<int> Powers =>
        Enumerable.Range(0, branches.Length).Where(i => active[i] && branches[i] is { Kind: BranchKind.Power, Value: > 0 });

    /// <summary>Every power load has its plus above its minus.</summary>
    public bool PowersAreFed(double[] volts) => Powers.All(i => Across(i, volts) > 0);

    public void Drop(int i) => active[i] = false;

    public double Across(int i, double[] volts) => VoltsAt(a[i], volts) - VoltsAt(b[i], volts);

    public double Amps(int i, double[] volts, double scale) => active[i] ? branches[i].At(Across(i, volts), scale).Amps : 0;

    /// <summary>Current that leaves each node through its branches; nothing, at the answer.</summary>
    public void Sum(double[] volts, double scale, double[] sums)
    {
        Array.Clear(sums);
        for (var i = 0; i < branches.Length; i++)
        {
            if (active[i])
            {
                var amps = branches[i].At(Across(i, volts), scale).Amps;
                Spread(sums, i, amps);
            }
        }
    }

    /// <summary>Adds a current that flows through a branch to the sums at its ends.</summary>
    public void Spread(double[] sums, int i, double amps)
    {
        if (a[i] >= 0)
        {
            sums[a[i]] += amps;
        }

        if (b[i] >= 0)
        {
            sums[b[i]] -= amps;
        }
    }

    /// <summary>Factors the derivatives. False if they are not positive definite: no stable point lies there.</summary>
    /// <param name="volts">The volts.</param>
    /// <param name="scale">Share of all powers.</param>
    /// <param name="steepest">Takes batteries on the steeper of their sides: a step then leads on past the kink behind which the circuit
    /// is stable again.</param>
    /// <param name="stiffened">A branch that is given more conductance; −1 for none.</param>
    /// <param name="by">That conductance in siemens.</param>
    public bool Factor(double[] volts, double scale, bool steepest = false, int stiffened = -1, double by = 0)
    {
        matrix.Clear();
        for (var i = 0; i < branches.Length; i++)
        {
            if (!active[i] || a[i] == b[i])
            {
                continue;
            }

            var slope = steepest ? branches[i].Steepest(Across(i, volts), scale) : branches[i].At(Across(i, volts), scale).Slope;
            slope += i == stiffened ? by : 0;
            if (a[i] >= 0)
            {
                matrix.Add(matrix.Diagonal(a[i]), slope);
            }

            if (b[i] >= 0)
            {
                matrix.Add(matrix.Diagonal(b[i]), slope);
            }

            if (slot[i] >= 0)
            {
                matrix.Add(slot[i], -slope);
            }
        }

        return matrix.Factor();
    }

    public void Solve(double[] side) => matrix.Solve(side);

    /// <summary>Volts at one unknown for an ampere into another, with the present factors.</summary>
    public double Transfer(int to, int from) => to < 0 || from < 0 ? 0 : matrix.Inverse(to, from);

    /// <summary>The unknowns at the ends of a branch; −1 where it ends at what volts are counted from.</summary>
    public (int A, int B) Ends(int i) => (a[i], b[i]);

    /// <summary>
    /// Kirchhoff's current law: the largest sum at a node over the currents there, or over 1e-6 of the largest of all. What the rounding of
    /// the volts themselves makes of a milliohm is not counted.
    /// </summary>
    public double Residual(double[] volts, double scale)
    {
        var sums = new double[Unknowns];
        var sizes = new double[Unknowns];
        var rounding = new double[Unknowns];
        var largest = 0.0;
        for (var i = 0; i < branches.Length; i++)
        {
            if (!active[i])
            {
                continue;
            }

            var (amps, slope) = branches[i].At(Across(i, volts), scale);
            Spread(sums, i, amps);
            var size = Math.Abs(amps);
            largest = Math.Max(largest, size);

            // The volts across are a difference: those of either end are rounded.
            var rounded = Epsilon * Math.Abs(slope) * Math.Max(1, Math.Max(Math.Abs(VoltsAt(a[i], volts)), Math.Abs(VoltsAt(b[i], volts))));
            foreach (var n in (ReadOnlySpan<int>)[a[i], b[i]])
            {
                if (n >= 0)
                {
                    sizes[n] = Math.Max(sizes[n], size);
                    rounding[n] += rounded;
                }
            }
        }

        var worst = 0.0;
        for (var n = 0; n < Unknowns; n++)
        {
            var size = Math.Max(sizes[n], 1e-6 * largest);
            var left = Math.Abs(sums[n]) - rounding[n];
            worst = left > 0 ? Math.Max(worst, left / size) : worst;
        }

        return worst;
    }

    private static double VoltsAt(int unknown, double[] volts) => unknown < 0 ? 0 : volts[unknown];
}
