namespace WireSketch.Electrical.Solver;

/// <summary>
/// Brackets the last share of all powers that can be supplied, by halving; every answer starts from one of less power, which lies above
/// it.
/// </summary>
/// <param name="newton">The method.</param>
/// <param name="volts">The answer without any power; brought to that at <see cref="Low"/>.</param>
internal sealed class LoadBisection(DampedNewton newton, double[] volts)
{
    /// <summary>
    /// A bracket this wide is wide enough to look at the circuit a little before its limit: at it the derivatives say nothing any more.
    /// </summary>
    private const double Little = 1e-4;

    /// <summary>A share that can be supplied.</summary>
    public double Low { get; private set; }

    /// <summary>One that cannot.</summary>
    public double High { get; private set; } = 1;

    /// <summary>The answer at <see cref="Low"/>.</summary>
    public double[] Volts { get; } = volts;

    /// <summary>A share a little before the limit.</summary>
    public double LowBefore { get; private set; }

    /// <summary>The answer at <see cref="LowBefore"/>.</summary>
    public double[] VoltsBefore { get; private set; } = volts;

    /// <summary>Narrows the bracket.</summary>
    public void Narrow(double to)
    {
        while (High - Low > to)
        {
            if (High - Low > Little)
            {
                (LowBefore, VoltsBefore) = (Low, (double[])Volts.Clone());
            }

            var middle = (Low + High) / 2;
            if (newton.Run(Volts, middle))
            {
                Low = middle;
            }
            else
            {
                High = middle;
            }
        }
    }
}
