namespace WireSketch.Electrical.Solver;

/// <summary>
/// Newton's method for the node equations, from above. With positive-definite derivatives the equations are those of a convex
/// potential near the answer; a step that overshoots the least potential along its way is shortened, and where the
/// derivatives cease to be positive definite there is no stable answer.
/// </summary>
internal sealed class DampedNewton(NodeEquations equations)
{
    /// <summary>What Kirchhoff's law may be off by.</summary>
    public const double Tolerance = 1e-9;

    private const int MostSteps = 120;

    private const int MostHalvings = 50;

    /// <summary>A step below this share of the volts changes nothing any more.</summary>
    private const double Still = 4e-15;

    private readonly double[] sums = new double[equations.Unknowns];
    private readonly double[] step = new double[equations.Unknowns];
    private readonly double[] trial = new double[equations.Unknowns];

    /// <summary>Steps taken in all.</summary>
    public int Steps { get; private set; }

    /// <summary>Brings the volts to the answer for a share of all powers; false, with the volts as they were, if there is none.</summary>
    public bool Run(double[] volts, double scale)
    {
        var before = (double[])volts.Clone();
        if (Iterate(volts, scale) && equations.Residual(volts, scale) <= Tolerance)
        {
            return true;
        }

        before.CopyTo(volts, 0);
        return false;
    }

    private bool Iterate(double[] volts, double scale)
    {
        if (equations.Unknowns == 0)
        {
            return true;
        }

        var last = double.PositiveInfinity;
        equations.Sum(volts, scale, sums);
        for (var i = 0; i < MostSteps; i++)
        {
            Steps++;
            var stable = equations.Factor(volts, scale);
            if (!stable && (last < 1e-5 || !equations.Factor(volts, scale, steepest: true)))
            {
                // At the very limit of the power the derivative vanishes together with the sums.
                return last < 1e-5;
            }

            for (var n = 0; n < step.Length; n++)
            {
                step[n] = -sums[n];
            }

            equations.Solve(step);
            var share = Room(volts, scale);
            var size = Size(volts) * share;
            share = Shorten(volts, scale, share, size);
            size = Size(volts) * share;
            trial.CopyTo(volts, 0);
            if (!double.IsFinite(size))
            {
                return false;
            }

            // Done when the step is rounding, or when small steps shrink no more.
            if (size <= Still || (size < 1e-7 && size >= last))
            {
                return stable;
            }

            last = size;
        }

        return last < 1e-7;
    }

    /// <summary>
    /// Goes along the step and stops where the potential is near its least: there the sums, seen along the step, change their sign.
    /// Halves the
    /// stretch in which that must be, which a sharp bend of a characteristic cannot hinder. Leaves the place in trial and its sums in sums.
    /// </summary>
    private double Shorten(double[] volts, double scale, double share, double size)
    {
        var (low, high) = (0.0, share);
        var slope = Slope(sums);
        for (var i = 0; ; i++)
        {
            for (var n = 0; n < step.Length; n++)
            {
                trial[n] = volts[n] + (share * step[n]);
            }

            equations.Sum(trial, scale, sums);
            var here = Slope(sums);
            if (size < 1e-9 || i == MostHalvings || (i == 0 ? here <= -0.5 * slope : Math.Abs(here) <= -0.5 * slope))
            {
                return share;
            }

            (low, high) = here > 0 ? (low, share) : (share, high);
            share = (low + high) / 2;
        }
    }

    /// <summary>
    /// How much of the step leaves every power load seven tenths of its volts: a longer one may land beyond the lower, unstable answer.
    /// </summary>
    private double Room(double[] volts, double scale)
    {
        var share = 1.0;
        if (scale == 0)
        {
            return share;
        }

        for (var i = 0; i < equations.Branches; i++)
        {
            if (equations.Branch(i).Kind == BranchKind.Power && equations.IsActive(i))
            {
                var change = equations.Across(i, step);
                var now = equations.Across(i, volts);
                if (now + change < 0.7 * now)
                {
                    share = Math.Min(share, -0.3 * now / change);
                }
            }
        }

        return share;
    }

    private double Slope(double[] at)
    {
        var sum = 0.0;
        for (var n = 0; n < step.Length; n++)
        {
            sum += at[n] * step[n];
        }

        return sum;
    }

    private double Size(double[] volts)
    {
        var (most, high) = (0.0, 1.0);
        for (var n = 0; n < step.Length; n++)
        {
            most = Math.Max(most, Math.Abs(step[n]));
            high = Math.Max(high, Math.Abs(volts[n]));
            if (double.IsNaN(step[n]))
            {
                return double.NaN;
            }
        }

        return most / high;
    }
}
