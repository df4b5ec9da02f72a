namespace WireSketch.Electrical.Solver;

/// <summary>
/// A sparse symmetric matrix of fixed pattern, and its factors L·D·Lᵀ. The pattern is analyzed once (elimination tree, length of
/// every column); values change and are factored again row by row, each row's pattern read off the tree (up-looking; Davis,
/// Direct Methods for Sparse Linear Systems, SIAM 2006, ch. 4).
/// </summary>
internal sealed class SymmetricMatrix
{
    /// <summary>A pivot below this share of its diagonal entry is none.</summary>
    private const double Nothing = 1e-15;

    private readonly int count;
    private readonly int[] order;
    private readonly int[] columns;
    private readonly int[] rows;
    private readonly double[] values;
    private readonly int[] parent;
    private readonly int[] factorColumns;
    private readonly int[] factorRows;
    private readonly double[] factor;
    private readonly double[] pivots;
    private readonly int[] filled;
    private readonly int[] flag;
    private readonly int[] pattern;
    private readonly double[] work;
    private readonly double[] other;
    private readonly Dictionary<long, int> slots;
    private readonly int[] place;

    /// <param name="count">Number of unknowns.</param>
    /// <param name="edges">Pairs of unknowns with an entry off the diagonal: the lower one in the high half. Sorted, each once.</param>
    public SymmetricMatrix(int count, long[] edges)
    {
        this.count = count;
        order = EliminationOrder.Of(count, edges);
        place = new int[count];
        for (var i = 0; i < count; i++)
        {
            place[order[i]] = i;
        }

        (columns, rows) = UpperTriangle(edges);
        values = new double[rows.Length];
        slots = new(edges.Length);
        for (var j = 0; j < count; j++)
        {
            for (var p = columns[j]; p < columns[j + 1]; p++)
            {
                if (rows[p] != j)
                {
                    slots[Key(order[rows[p]], order[j])] = p;
                }
            }
        }

        parent = new int[count];
        flag = new int[count];
        filled = new int[count];
        factorColumns = new int[count + 1];
        Analyze();
        factorRows = new int[factorColumns[count]];
        factor = new double[factorRows.Length];
        pivots = new double[count];
        pattern = new int[count];
        work = new double[count];
        other = new double[count];
    }

    /// <summary>Entries of the factor below its diagonal.</summary>
    public int FactorLength => factorRows.Length;

    /// <summary>Where the diagonal entry of an unknown is stored.</summary>
    public int Diagonal(int unknown) => columns[place[unknown] + 1] - 1;

    /// <summary>Where the entry of two unknowns is stored.</summary>
    public int Slot(int a, int b) => slots[Key(a, b)];

    public static long Key(int a, int b) => ((long)Math.Min(a, b) << 32) | (uint)Math.Max(a, b);

    public void Clear() => Array.Clear(values);

    public void Add(int slot, double value) => values[slot] += value;

    /// <summary>Factors the present values. False if the matrix is not positive definite.</summary>
    public bool Factor()
    {
        for (var k = 0; k < count; k++)
        {
            var top = count;
            flag[k] = k;
            filled[k] = 0;
            work[k] = 0;
            for (var p = columns[k]; p < columns[k + 1]; p++)
            {
                var i = rows[p];
                work[i] += values[p];
                var length = 0;
                for (; flag[i] != k; i = parent[i])
                {
                    pattern[length++] = i;
                    flag[i] = k;
                }

                while (length > 0)
                {
                    pattern[--top] = pattern[--length];
                }
            }

            var diagonal = work[k];
            var pivot = diagonal;
            work[k] = 0;
            for (; top < count; top++)
            {
                var i = pattern[top];
                var y = work[i];
                work[i] = 0;
                var end = factorColumns[i] + filled[i];
                for (var p = factorColumns[i]; p < end; p++)
                {
                    work[factorRows[p]] -= factor[p] * y;
                }

                var l = y / pivots[i];
                pivot -= l * y;
                factorRows[end] = k;
                factor[end] = l;
                filled[i]++;
            }

            if (!(pivot > Nothing * Math.Abs(diagonal)))
            {
                Array.Clear(work);
                Array.Fill(flag, -1);
                return false;
            }

            pivots[k] = pivot;
        }

        return true;
    }

    /// <summary>Solves for a right-hand side with the present factors, in place.</summary>
    public void Solve(double[] side)
    {
        var x = work;
        for (var i = 0; i < count; i++)
        {
            x[i] = side[order[i]];
        }

        for (var j = 0; j < count; j++)
        {
            var v = x[j];
            for (var p = factorColumns[j]; p < factorColumns[j + 1]; p++)
            {
                x[factorRows[p]] -= factor[p] * v;
            }
        }

        for (var j = count - 1; j >= 0; j--)
        {
            var v = x[j] / pivots[j];
            for (var p = factorColumns[j]; p < factorColumns[j + 1]; p++)
            {
                v -= factor[p] * x[factorRows[p]];
            }

            x[j] = v;
        }

        for (var i = 0; i < count; i++)
        {
            side[order[i]] = x[i];
            x[i] = 0;
        }
    }

    /// <summary>
    /// One entry of the inverse, with the present factors. A unit vector reaches only the ancestors of its unknown in the elimination tree,
    /// which are few where networks are like trees.
    /// </summary>
    public double Inverse(int a, int b)
    {
        var sum = 0.0;
        Reach(place[a], work);
        if (a == b)
        {
            for (var j = place[a]; j >= 0; j = parent[j])
            {
                sum += work[j] * work[j] / pivots[j];
                work[j] = 0;
            }

            return sum;
        }

        Reach(place[b], other);
        for (var j = place[b]; j >= 0; j = parent[j])
        {
            sum += work[j] * other[j] / pivots[j];
            other[j] = 0;
        }

        for (var j = place[a]; j >= 0; j = parent[j])
        {
            work[j] = 0;
        }

        return sum;
    }

    private void Reach(int from, double[] x)
    {
        x[from] = 1;
        for (var j = from; j >= 0; j = parent[j])
        {
            for (var p = factorColumns[j]; p < factorColumns[j + 1]; p++)
            {
                x[factorRows[p]] -= factor[p] * x[j];
            }
        }
    }

    private (int[] Columns, int[] Rows) UpperTriangle(long[] edges)
    {
        var start = new int[count + 1];
        foreach (var edge in edges)
        {
            start[Math.Max(place[(int)(edge >> 32)], place[(int)edge]) + 1]++;
        }

        for (var j = 0; j < count; j++)
        {
            start[j + 1] += start[j] + 1;
        }

        var row = new int[start[count]];
        var next = start.AsSpan(0, count).ToArray();
        foreach (var edge in edges)
        {
            var (a, b) = (place[(int)(edge >> 32)], place[(int)edge]);
            row[next[Math.Max(a, b)]++] = Math.Min(a, b);
        }

        // The diagonal comes last in its column.
        for (var j = 0; j < count; j++)
        {
            row[next[j]] = j;
        }

        return (start, row);
    }

    private void Analyze()
    {
        var lengths = new int[count];
        for (var k = 0; k < count; k++)
        {
            parent[k] = -1;
            flag[k] = k;
            for (var p = columns[k]; p < columns[k + 1]; p++)
            {
                for (var i = rows[p]; flag[i] != k; i = parent[i])
                {
                    if (parent[i] < 0)
                    {
                        parent[i] = k;
                    }

                    lengths[i]++;
                    flag[i] = k;
                }
            }
        }

        for (var k = 0; k < count; k++)
        {
            factorColumns[k + 1] = factorColumns[k] + lengths[k];
        }

        Array.Fill(flag, -1);
    }
}
