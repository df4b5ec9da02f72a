namespace WireSketch.Electrical.Speakers;

/// <summary>Small dense linear algebra for the network of one output, which has a few dozen nodes at most.</summary>
internal static class Dense
{
    /// <summary>A leak from every node to the reference that keeps floating parts at a potential; a millionth of a coil's.</summary>
    private const double Leak = 1e-9;

    /// <summary>Potentials of all nodes with the reference at 0 and the driven node at 1 volt.</summary>
    /// <param name="conductance">The conductance matrix, untouched.</param>
    /// <param name="reference">The node at 0 volts.</param>
    /// <param name="driven">The node at 1 volt.</param>
    public static double[]? Potentials(double[,] conductance, int reference, int driven)
    {
        var n = conductance.GetLength(0);
        var inner = Enumerable.Range(0, n).Where(i => i != reference && i != driven).ToArray();
        var m = inner.Length;
        var a = new double[m, m + 1];
        for (var i = 0; i < m; i++)
        {
            for (var j = 0; j < m; j++)
            {
                a[i, j] = conductance[inner[i], inner[j]];
            }

            a[i, i] += Leak;
            a[i, m] = -conductance[inner[i], driven];
        }

        for (var k = 0; k < m; k++)
        {
            var pivot = k;
            for (var i = k + 1; i < m; i++)
            {
                pivot = Math.Abs(a[i, k]) > Math.Abs(a[pivot, k]) ? i : pivot;
            }

            if (a[pivot, k] == 0)
            {
                return null;
            }

            for (var j = k; j <= m && pivot != k; j++)
            {
                (a[k, j], a[pivot, j]) = (a[pivot, j], a[k, j]);
            }

            for (var i = k + 1; i < m; i++)
            {
                var factor = a[i, k] / a[k, k];
                for (var j = k; j <= m && factor != 0; j++)
                {
                    a[i, j] -= factor * a[k, j];
                }
            }
        }

        var volts = new double[n];
        volts[driven] = 1;
        for (var i = m - 1; i >= 0; i--)
        {
            var sum = a[i, m];
            for (var j = i + 1; j < m; j++)
            {
                sum -= a[i, j] * volts[inner[j]];
            }

            volts[inner[i]] = sum / a[i, i];
        }

        return volts;
    }
}
