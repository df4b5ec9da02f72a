namespace WireSketch.Electrical.Solver;

/// <summary>A direct-current circuit, put together branch by branch. Node 0 is the reference.</summary>
internal sealed class DcCircuit(int nodes)
{
    private readonly List<Branch> branches = [];

    public int Nodes { get; private set; } = nodes;

    public IReadOnlyList<Branch> Branches => branches;

    /// <summary>A further node, for the inside of a device.</summary>
    public int NewNode() => Nodes++;

    /// <summary>A resistance; none at all makes one node of two.</summary>
    public int Resistor(int a, int b, double ohms) => Add(new(BranchKind.Resistor, a, b, 0, NotNegative(ohms), 0));

    public int Source(int plus, int minus, double volts, double ohms) => Add(new(BranchKind.Source, plus, minus, volts, Positive(ohms), 0));

    public int Battery(int plus, int minus, double volts, double ohms, double chargingOhms) =>
        Add(new(BranchKind.Battery, plus, minus, volts, Positive(ohms), Positive(chargingOhms)));

    /// <summary>An alternator or charger: at most <paramref name="limit"/> amps, infinite if unlimited.</summary>
    public int Regulated(int plus, int minus, double volts, double ohms, double limit) =>
        Add(new(BranchKind.Regulated, plus, minus, volts, Positive(ohms), NotNegative(limit)));

    /// <summary>A load of constant current; with a knee it draws less below so many volts, and nothing if reversed.</summary>
    public int Current(int from, int to, double amps, double knee = 0) =>
        Add(new(BranchKind.Current, from, to, amps, 0, NotNegative(knee)));

    public int Power(int plus, int minus, double watts) => Add(new(BranchKind.Power, plus, minus, NotNegative(watts), 0, 0));

    public int Diode(int from, int to, double drop, double ohms) => Add(new(BranchKind.Diode, from, to, drop, Positive(ohms), 0));

    private static double Positive(double value) =>
        value > 0 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "must be above zero");

    private static double NotNegative(double value) =>
        value >= 0 ? value : throw new ArgumentOutOfRangeException(nameof(value), value, "must not be negative");

    private int Add(Branch branch)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(branch.A);
        ArgumentOutOfRangeException.ThrowIfNegative(branch.B);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(branch.A, Nodes);
        ArgumentOutOfRangeException.ThrowIfGreaterThanOrEqual(branch.B, Nodes);
        branches.Add(branch);
        return branches.Count - 1;
    }
}
