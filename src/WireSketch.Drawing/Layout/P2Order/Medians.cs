using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>
/// The usual first order of a layered drawing: each item at the mean place of what it is joined to, swept right, left and right.
/// </summary>
internal static class Medians
{
    public static void Sweep(ColumnOrder order)
    {
        var w = order.Graph;
        int count = w.Columns.Count;
        for (int sweep = 0; sweep < 3; sweep++)
        {
            for (int k = 0; k < count; k++)
            {
                int c = sweep % 2 == 0 ? k : count - 1 - k;
                int[] items = order.Items[c];
                long[] mean = new long[w.Items];
                for (int i = 0; i < items.Length; i++)
                {
                    mean[items[i]] = Mean(order, items[i], i);
                }

                SortBy(items, i => mean[i], w, c);
                for (int i = 0; i < items.Length; i++)
                {
                    order.SetKey(items[i], i);
                }
            }
        }
    }

    /// <summary>Sorts a column, ties in the order they had; at a wall keeps the dummy nodes of one pass-through together.</summary>
    public static void SortBy(int[] items, Func<int, long> value, SegmentGraph graph, int column)
    {
        long[] keys = new long[items.Length];
        for (int i = 0; i < items.Length; i++)
        {
            keys[i] = (value(items[i]) * items.Length) + i;
        }

        if (graph.Columns.IsWall[column])
        {
            var first = new Dictionary<int, long>();
            for (int i = 0; i < items.Length; i++)
            {
                int bundle = graph.DummyBundle[items[i] - graph.Model.Bodies];
                if (bundle >= 0 && (!first.TryGetValue(bundle, out long key) || keys[i] < key))
                {
                    first[bundle] = keys[i];
                }
            }

            int[] by = (int[])items.Clone();
            var order = Enumerable.Range(0, items.Length)
                .OrderBy(i => graph.DummyBundle[by[i] - graph.Model.Bodies] is var u && u >= 0 ? first[u] : keys[i])
                .ThenBy(i => graph.DummyBundle[by[i] - graph.Model.Bodies]).ThenBy(i => keys[i]).ToArray();
            for (int i = 0; i < items.Length; i++)
            {
                items[i] = by[order[i]];
            }

            return;
        }

        Array.Sort(keys, items);
    }

    private static long Mean(ColumnOrder order, int item, int index)
    {
        var w = order.Graph;
        long sum = 0;
        int n = 0;
        for (int side = 0; side < 2; side++)
        {
            foreach (int e in w.Beside(item, side))
            {
                for (int end = 0; end < 2; end++)
                {
                    int node = end == 0 ? w.Segment[e].A : w.Segment[e].B;
                    if (w.NodeItem[node] != item)
                    {
                        int length = Math.Max(1, order.Items[w.ColumnOf(w.NodeItem[node])].Length);
                        sum += ((long)order.Key[node] << 8) / length;
                        n++;
                    }
                }
            }
        }

        return n > 0 ? sum / n : (((long)index << 20) / Math.Max(1, order.Items[w.ColumnOf(item)].Length));
    }
}
