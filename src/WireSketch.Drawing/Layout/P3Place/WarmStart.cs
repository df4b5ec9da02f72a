using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>Takes rows and ordinates over from a sheet that differs little; what is new goes where its partners would have it.</summary>
internal sealed class WarmStart(ColumnOrder order, Frames frames, Attraction attraction, int[] y)
{
    public void From(Placement other)
    {
        var (w, old) = (order.Graph, other.Graph);
        bool[] known = new bool[y.Length];
        for (int b = 0; b < w.Model.Bodies; b++)
        {
            (y[b], known[b]) = (other.Y[b], true);
            for (int side = 0; side < 2; side++)
            {
                int rows = Math.Min(other.Frames.Shift[(2 * b) + side], frames.SpareRows[(2 * b) + side]);
                if (rows > 0)
                {
                    frames.MoveRows(b, side, rows);
                }
            }
        }

        var dummies = new Dictionary<(long, long), int>(old.Dummies);
        for (int k = 0; k < old.Dummies; k++)
        {
            dummies[(old.Columns.Key[old.DummyColumn[k]], old.DummyKey[k])] = other.Y[old.Model.Bodies + k];
        }

        for (int k = 0; k < w.Dummies; k++)
        {
            int i = w.Model.Bodies + k;
            known[i] = dummies.TryGetValue((w.Columns.Key[w.DummyColumn[k]], w.DummyKey[k]), out y[i]);
        }

        for (int i = w.Model.Bodies; i < y.Length; i++)
        {
            if (!known[i])
            {
                y[i] = Model.Measure.Down(Wanted(i, known));
                known[i] = true;
            }
        }
    }

    private int Wanted(int item, bool[] known)
    {
        int sum = 0, n = 0;
        for (int k = attraction.Start[item]; k < attraction.Start[item + 1]; k++)
        {
            if (known[attraction.Other[k]])
            {
                sum += y[attraction.Other[k]] + frames.Dy[attraction.Theirs[k]] - frames.Dy[attraction.Mine[k]];
                n++;
            }
        }

        return n == 0 ? 0 : sum / n;
    }
}
