using System.Numerics;

namespace WireSketch.Electrical.Solver;

/// <summary>
/// A small dense system of complex equations, solved by elimination with the largest pivot of each column and one refinement.
/// </summary>
internal sealed class ComplexSystem(int size)
{
    private readonly Complex[,] matrix = new Complex[size, size];
    private readonly Complex[] side = new Complex[size];

    /// <summary>Adds to an entry; a row or column of −1 is the reference and is left out.</summary>
    public void Add(int row, int column, Complex value)
    {
        if (row >= 0 && column >= 0)
        {
            matrix[row, column] += value;
        }
    }

    public void AddSide(int row, Complex value)
    {
        if (row >= 0)
        {
            side[row] += value;
        }
    }

    /// <summary>The unknowns. One that no equation fixes, such as the current round a ring of no resistance, is zero.</summary>
    public Complex[] Solve()
    {
        var lu = (Complex[,])matrix.Clone();
        var order = Enumerable.Range(0, size).ToArray();
        var fixedBy = new bool[size];
        var scale = 0.0;
        foreach (var entry in matrix)
        {
            scale = Math.Max(scale, entry.Magnitude);
        }

        for (var k = 0; k < size; k++)
        {
            var best = k;
            for (var i = k + 1; i < size; i++)
            {
                if (lu[i, k].Magnitude > lu[best, k].Magnitude)
                {
                    best = i;
                }
            }

            if (best != k)
            {
                (order[k], order[best]) = (order[best], order[k]);
                for (var j = 0; j < size; j++)
                {
                    (lu[k, j], lu[best, j]) = (lu[best, j], lu[k, j]);
                }
            }

            fixedBy[k] = lu[k, k].Magnitude > 1e-14 * Math.Min(scale, 1);
            for (var i = k + 1; fixedBy[k] && i < size; i++)
            {
                if (lu[i, k] == Complex.Zero)
                {
                    continue;
                }

                lu[i, k] /= lu[k, k];
                for (var j = k + 1; j < size; j++)
                {
                    lu[i, j] -= lu[i, k] * lu[k, j];
                }
            }
        }

        var x = Substitute(lu, order, fixedBy, side);
        var rest = new Complex[size];
        for (var i = 0; i < size; i++)
        {
            rest[i] = side[i];
            for (var j = 0; j < size; j++)
            {
                rest[i] -= matrix[i, j] * x[j];
            }
        }

        var correction = Substitute(lu, order, fixedBy, rest);
        return [.. x.Zip(correction, (a, b) => a + b)];
    }

    private Complex[] Substitute(Complex[,] lu, int[] order, bool[] fixedBy, Complex[] right)
    {
        var x = new Complex[size];
        for (var i = 0; i < size; i++)
        {
            x[i] = right[order[i]];
            for (var j = 0; j < i; j++)
            {
                x[i] -= fixedBy[j] ? lu[i, j] * x[j] : 0;
            }
        }

        for (var i = size - 1; i >= 0; i--)
        {
            for (var j = i + 1; j < size; j++)
            {
                x[i] -= lu[i, j] * x[j];
            }

            x[i] = fixedBy[i] ? x[i] / lu[i, i] : 0;
        }

        return x;
    }
}
