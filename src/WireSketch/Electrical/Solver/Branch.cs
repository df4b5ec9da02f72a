namespace WireSketch.Electrical.Solver;

/// <summary>How a branch's current follows its voltage.</summary>
internal enum BranchKind
{
    Resistor,

    /// <summary>A voltage behind a resistance.</summary>
    Source,

    /// <summary>A voltage behind one resistance while it gives, and behind a larger one while it is charged.</summary>
    Battery,

    /// <summary>Holds a voltage behind a resistance up to its largest current; never takes any.</summary>
    Regulated,

    /// <summary>A current whatever the voltage; below its knee it falls to nothing.</summary>
    Current,

    /// <summary>A power whatever the voltage.</summary>
    Power,

    /// <summary>Conducts from A to B above its drop.</summary>
    Diode,
}

/// <summary>
/// A two-terminal element. Its current is counted from <c>A</c> through it to <c>B</c>, its voltage is that of <c>A</c> over <c>B</c>.
/// </summary>
/// <param name="Kind">Its characteristic.</param>
/// <param name="A">Plus node.</param>
/// <param name="B">Minus node.</param>
/// <param name="Value">Volts of a source, amps of a current, watts of a power, volts of a diode's drop.</param>
/// <param name="Ohms">Resistance; of a battery, while it gives.</param>
/// <param name="Limit">Largest amps of a regulated source; ohms of a battery while it is charged; knee volts of a current.</param>
internal readonly record struct Branch(BranchKind Kind, int A, int B, double Value, double Ohms, double Limit)
{
    /// <summary>What still flows through a diode that blocks, so that what lies behind it keeps a definite voltage.</summary>
    private const double Leak = 1e-9;

    /// <summary>Ties the voltages of its nodes together; loads alone do not.</summary>
    public bool Conducts => Kind is not (BranchKind.Current or BranchKind.Power);

    public bool IsShort => Kind == BranchKind.Resistor && Ohms == 0;

    /// <summary>Gives a part of the circuit its voltage.</summary>
    public bool Drives => Kind is BranchKind.Source or BranchKind.Battery or BranchKind.Regulated;

    /// <summary>Its derivative; of a battery, on the side where it is steepest.</summary>
    public double Steepest(double u, double scale) => Kind == BranchKind.Battery ? 1 / Math.Min(Ohms, Limit) : At(u, scale).Slope;

    /// <summary>Current and its derivative at a voltage; powers are scaled.</summary>
    public (double Amps, double Slope) At(double u, double scale)
    {
        switch (Kind)
        {
            case BranchKind.Resistor:
                return (u / Ohms, 1 / Ohms);
            case BranchKind.Source:
                return ((u - Value) / Ohms, 1 / Ohms);
            case BranchKind.Battery:
                // At rest the giving side counts: a load on it draws from there.
                var r = u <= Value ? Ohms : Limit;
                return ((u - Value) / r, 1 / r);
            case BranchKind.Regulated:
                var gives = (Value - u) / Ohms;
                return gives <= 0 ? (0, Leak) : gives >= Limit ? (-Limit, Leak) : (-gives, 1 / Ohms);
            case BranchKind.Current:
                return Limit <= 0 || u >= Limit ? (Value, 0) : u <= 0 ? (0, 0) : (Value * u / Limit, Value / Limit);
            case BranchKind.Power when scale == 0:
                return (0, 0);
            case BranchKind.Power:
                var amps = scale * Value / u;
                return (amps, -amps / u);
            default:
                return u > Value ? ((Leak * u) + ((u - Value) / Ohms), Leak + (1 / Ohms)) : (Leak * u, Leak);
        }
    }
}
