using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Finds an order with few crossings: from nothing, or from the order of an earlier sheet.</summary>
internal static class Orderer
{
    /// <summary>A first order: bodies as the spec lists them, dummy nodes near what they join, then medians and sifting.</summary>
    public static ColumnOrder First(SegmentGraph graph, int passes)
    {
        int[] at = new int[graph.Items];
        Array.Fill(at, -1);
        int[] seen = new int[graph.Columns.Count], size = new int[graph.Columns.Count];
        for (int b = 0; b < graph.Model.Bodies; b++)
        {
            size[graph.Columns.Of[b]]++;
        }

        for (int b = 0; b < graph.Model.Bodies; b++)
        {
            int c = graph.Columns.Of[b];
            at[b] = (int)(((2L * seen[c]++) + 1) * ColumnOrder.Whole / (2 * size[c]));
        }

        var order = Arrange(graph, at, Array.ConvertAll(graph.Choices.SideOrder, s => (int[])s.Clone()));
        Medians.Sweep(order);
        Sift(order, passes, null);
        return order;
    }

    /// <summary>
    /// An order in which the bodies stand where they are told to; dummy nodes, and bodies at -1, go near what they join, and only dummy
    /// nodes are sifted.
    /// </summary>
    public static ColumnOrder FromPrevious(SegmentGraph graph, int[] bodies, int passes)
    {
        int[] at = new int[graph.Items];
        Array.Fill(at, -1);
        bodies.CopyTo(at, 0);
        var order = Arrange(graph, at, Array.ConvertAll(graph.Choices.SideOrder, s => (int[])s.Clone()));
        Sift(order, passes, null, dummiesOnly: true);
        return order;
    }

    /// <summary>The order of an earlier sheet carried over to new wiring; items that are new go near what they join.</summary>
    /// <param name="graph">The new wiring.</param>
    /// <param name="earlier">The earlier order.</param>
    /// <param name="positions">Where the earlier sheet's items are to stand.</param>
    public static ColumnOrder Carry(SegmentGraph graph, ColumnOrder earlier, int[] positions)
    {
        var old = earlier.Graph;
        int[] at = new int[graph.Items];
        Array.Fill(at, -1);
        Array.Copy(positions, at, graph.Model.Bodies);
        var dummies = new Dictionary<(long, long), int>(old.Dummies);
        for (int k = 0; k < old.Dummies; k++)
        {
            dummies[(old.Columns.Key[old.DummyColumn[k]], old.DummyKey[k])] = positions[old.Model.Bodies + k];
        }

        for (int k = 0; k < graph.Dummies; k++)
        {
            if (dummies.TryGetValue((graph.Columns.Key[graph.DummyColumn[k]], graph.DummyKey[k]), out int p))
            {
                at[graph.Model.Bodies + k] = p;
            }
        }

        return Arrange(graph, at, Array.ConvertAll(graph.Choices.SideOrder, s => (int[])s.Clone()));
    }

    /// <summary>
    /// Sifts terminals and items until still or out of passes. With <paramref name="changed"/> only those columns and their neighbors are
    /// looked at first.
    /// </summary>
    public static void Sift(ColumnOrder order, int passes, bool[]? changed, bool dummiesOnly = false)
    {
        var w = order.Graph;
        int count = w.Columns.Count;
        bool[] todo = new bool[count];
        for (int c = 0; c < count; c++)
        {
            todo[c] = changed is null || changed[c] || (c > 0 && changed[c - 1]) || (c + 1 < count && changed[c + 1]);
        }

        var terminals = new TerminalSifter(order);
        var sifter = new ItemSifter(order, dummiesOnly);
        for (int pass = 0; pass < passes; pass++)
        {
            bool[] next = new bool[count];
            bool any = false;
            for (int k = 0; k < count; k++)
            {
                int c = pass % 2 == 0 ? k : count - 1 - k;
                if (!todo[c])
                {
                    continue;
                }

                int gain = 0;
                foreach (int item in order.Items[c])
                {
                    if (!w.IsDummy(item) && w.Model.BodySlot[item] < w.Model.BodySlot[item + 1])
                    {
                        gain += terminals.Sift(item);
                    }
                }

                gain += sifter.Sift(c);
                if (gain > 0)
                {
                    any = true;
                    next[c] = true;
                    next[Math.Max(0, c - 1)] = true;
                    next[Math.Min(count - 1, c + 1)] = true;
                }
            }

            todo = next;
            if (!any)
            {
                break;
            }
        }
    }

    private static ColumnOrder Arrange(SegmentGraph graph, int[] at, int[][] sideOrder)
    {
        bool[] isNew = Array.ConvertAll(at, p => p < 0);
        for (int round = 0; round < 2; round++)
        {
            for (int item = 0; item < graph.Items; item++)
            {
                if (!isNew[item])
                {
                    continue;
                }

                long sum = 0;
                int n = 0;
                for (int side = 0; side < 2; side++)
                {
                    foreach (int e in graph.Beside(item, side))
                    {
                        int a = graph.NodeItem[graph.Segment[e].A], b = graph.NodeItem[graph.Segment[e].B];
                        int other = a == item ? b : a;
                        if (other != item && at[other] >= 0)
                        {
                            sum += at[other];
                            n++;
                        }
                    }
                }

                if (n > 0)
                {
                    at[item] = (int)(sum / n);
                }
            }
        }

        int[][] items = new int[graph.Columns.Count][];
        var columns = new Buckets(items.Length);
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < graph.Items; i++)
            {
                columns.Put(graph.ColumnOf(i), i);
            }

            columns.Turn();
        }

        for (int c = 0; c < items.Length; c++)
        {
            items[c] = columns.Content[columns.Start[c]..columns.Start[c + 1]];
            Medians.SortBy(items[c], i => at[i] < 0 ? ColumnOrder.Whole / 2 : at[i], graph, c);
        }

        return new ColumnOrder(graph, items, sideOrder);
    }
}
