namespace WireSketch.Electrical.Solver;

/// <summary>
/// The limit of the power itself: the share of all powers, and the volts there, at which the derivatives cease to be positive definite.
/// Near it
/// volts go with the root of what is left, so that an answer sought from below keeps half its digits; the limit, asked for as a limit,
/// keeps them all. Newton's method for the node equations together with the one that says "the derivatives are singular", which is taken
/// from
/// the derivatives bordered by the load that collapses (Govaerts, Numerical Methods for Bifurcations of Dynamical Equilibria, SIAM 2000,
/// ch. 3).
/// </summary>
/// <param name="equations">The equations.</param>
/// <param name="load">The power load that collapses.</param>
internal sealed class VoltageCollapseLimit(NodeEquations equations, int load)
{
    private const int MostSteps = 30;

    /// <summary>What the volts and the share may still move by in the step before the last.</summary>
    private const double Close = 1e-8;

    private readonly double[] border = Border(equations, load);
    private readonly double[] image = new double[equations.Unknowns];
    private double stiffness;

    /// <summary>
    /// Moves volts and share to the limit near them; null if there is none of this kind, as where a source reaches its largest current.
    /// </summary>
    public (double[] Volts, double Scale)? Find(double[] start, double scale)
    {
        var volts = (double[])start.Clone();
        var close = false;
        for (var i = 0; i < MostSteps; i++)
        {
            // Stiff enough at the load to be positive definite on either side of the limit.
            stiffness = -8 * equations.Branch(load).At(equations.Across(load, volts), scale).Slope;
            if (!equations.Factor(volts, scale, stiffened: load, by: stiffness))
            {
                return null;
            }

            border.CopyTo(image, 0);
            equations.Solve(image);
            var (step, change) = Step(volts, scale);
            var size = Math.Abs(change);
            for (var n = 0; n < volts.Length; n++)
            {
                volts[n] += step[n];
                size = Math.Max(size, Math.Abs(step[n]));
            }

            scale += change;
            if (!double.IsFinite(size) || scale <= 0 || !equations.PowersAreFed(volts))
            {
                return null;
            }

            if (close)
            {
                return (volts, scale);
            }

            close = size < Close;
        }

        return null;
    }

    private (double[] Volts, double Scale) Step(double[] volts, double scale)
    {
        var side = new double[volts.Length];
        equations.Sum(volts, scale, side);
        Negate(side);
        var left = Bordered(side, 0);

        // How the sums, and the sign of singularity, change with the share and with the volts.
        var byScale = new double[volts.Length];
        var (kernel, singular) = Bordered(new double[volts.Length], 1);
        var (signByScale, signByVolts) = (0.0, new double[volts.Length]);
        foreach (var i in equations.Powers)
        {
            var (u, w) = (equations.Across(i, volts), equations.Across(i, kernel));
            var watts = equations.Branch(i).Value;
            equations.Spread(byScale, i, -watts / u);
            signByScale += w * w * watts / (u * u);
            equations.Spread(signByVolts, i, -w * w * 2 * scale * watts / (u * u * u));
        }

        var right = Bordered(byScale, 0);

        // The step is left + change·right + along·kernel; what remains of the border and of the sign must vanish.
        var (a, b, c) = (right.Over, singular, -left.Over);
        var (d, e, f) = (Dot(signByVolts, right.Volts) + signByScale, Dot(signByVolts, kernel), -singular - Dot(signByVolts, left.Volts));
        var determinant = (a * e) - (b * d);
        var change = ((c * e) - (b * f)) / determinant;
        var along = ((a * f) - (c * d)) / determinant;
        var step = left.Volts;
        for (var n = 0; n < step.Length; n++)
        {
            step[n] += (change * right.Volts[n]) + (along * kernel[n]);
        }

        return (step, change);
    }

    /// <summary>Solves the derivatives bordered by the load for a side, given the volts the answer has across the load.</summary>
    private (double[] Volts, double Over) Bordered(double[] side, double across)
    {
        for (var n = 0; n < side.Length; n++)
        {
            side[n] += stiffness * across * border[n];
        }

        equations.Solve(side);
        var over = (Dot(border, side) - across) / Dot(border, image);
        for (var n = 0; n < side.Length; n++)
        {
            side[n] -= over * image[n];
        }

        return (side, over);
    }

    private static double[] Border(NodeEquations equations, int load)
    {
        var border = new double[equations.Unknowns];
        equations.Spread(border, load, 1);
        return border;
    }

    private static void Negate(double[] values)
    {
        for (var n = 0; n < values.Length; n++)
        {
            values[n] = -values[n];
        }
    }

    private static double Dot(double[] a, double[] b)
    {
        var sum = 0.0;
        for (var n = 0; n < a.Length; n++)
        {
            sum += a[n] * b[n];
        }

        return sum;
    }
}
