using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Finds an order with few crossings: from nothing, or from the order of an earlier sheet.</summary>
internal static class Orderer
{
    /// <summary>A first order: bodies as the spec lists them, lanes near what they join, then medians and sifting.</summary>
    public static ColumnOrder First(SegmentGraph wiring, int passes)
    {
        int[] at = new int[wiring.Items];
        Array.Fill(at, -1);
        int[] seen = new int[wiring.Columns.Count], size = new int[wiring.Columns.Count];
        for (int b = 0; b < wiring.Model.Bodies; b++)
        {
            size[wiring.Columns.Of[b]]++;
        }

        for (int b = 0; b < wiring.Model.Bodies; b++)
        {
            int c = wiring.Columns.Of[b];
            at[b] = (int)(((2L * seen[c]++) + 1) * ColumnOrder.Whole / (2 * size[c]));
        }

        var order = Arrange(wiring, at, Array.ConvertAll(wiring.Choices.SideOrder, s => (int[])s.Clone()));
        Medians.Sweep(order);
        Sift(order, passes, null);
        return order;
    }

    /// <summary>An order in which the bodies stand where they are told to; lanes, and bodies at -1, go near what they join, and only lanes are sifted.</summary>
    public static ColumnOrder Told(SegmentGraph wiring, int[] bodies, int passes)
    {
        int[] at = new int[wiring.Items];
        Array.Fill(at, -1);
        bodies.CopyTo(at, 0);
        var order = Arrange(wiring, at, Array.ConvertAll(wiring.Choices.SideOrder, s => (int[])s.Clone()));
        Sift(order, passes, null, lanesOnly: true);
        return order;
    }

    /// <summary>The order of an earlier sheet carried over to new wiring; items that are new go near what they join.</summary>
    /// <param name="wiring">The new wiring.</param>
    /// <param name="earlier">The earlier order.</param>
    /// <param name="positions">Where the earlier sheet's items are to stand.</param>
    public static ColumnOrder Carry(SegmentGraph wiring, ColumnOrder earlier, int[] positions)
    {
        var old = earlier.Wiring;
        int[] at = new int[wiring.Items];
        Array.Fill(at, -1);
        Array.Copy(positions, at, wiring.Model.Bodies);
        var lanes = new Dictionary<(long, long), int>(old.Lanes);
        for (int k = 0; k < old.Lanes; k++)
        {
            lanes[(old.Columns.Key[old.LaneColumn[k]], old.LaneKey[k])] = positions[old.Model.Bodies + k];
        }

        for (int k = 0; k < wiring.Lanes; k++)
        {
            if (lanes.TryGetValue((wiring.Columns.Key[wiring.LaneColumn[k]], wiring.LaneKey[k]), out int p))
            {
                at[wiring.Model.Bodies + k] = p;
            }
        }

        return Arrange(wiring, at, Array.ConvertAll(wiring.Choices.SideOrder, s => (int[])s.Clone()));
    }

    /// <summary>Sifts terminals and items until still or out of passes. With <paramref name="changed"/> only those columns and their neighbors are looked at first.</summary>
    public static void Sift(ColumnOrder order, int passes, bool[]? changed, bool lanesOnly = false)
    {
        var w = order.Wiring;
        int count = w.Columns.Count;
        bool[] todo = new bool[count];
        for (int c = 0; c < count; c++)
        {
            todo[c] = changed is null || changed[c] || (c > 0 && changed[c - 1]) || (c + 1 < count && changed[c + 1]);
        }

        var terminals = new TerminalSifter(order);
        var sifter = new ItemSifter(order, lanesOnly);
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
                    if (!w.IsLane(item) && w.Model.BodySlot[item] < w.Model.BodySlot[item + 1])
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

    private static ColumnOrder Arrange(SegmentGraph wiring, int[] at, int[][] sideOrder)
    {
        bool[] isNew = Array.ConvertAll(at, p => p < 0);
        for (int round = 0; round < 2; round++)
        {
            for (int item = 0; item < wiring.Items; item++)
            {
                if (!isNew[item])
                {
                    continue;
                }

                long sum = 0;
                int n = 0;
                for (int side = 0; side < 2; side++)
                {
                    foreach (int e in wiring.Beside(item, side))
                    {
                        int a = wiring.NodeItem[wiring.Piece[e].A], b = wiring.NodeItem[wiring.Piece[e].B];
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

        int[][] items = new int[wiring.Columns.Count][];
        var columns = new Buckets(items.Length);
        for (int pass = 0; pass < 2; pass++)
        {
            for (int i = 0; i < wiring.Items; i++)
            {
                columns.Put(wiring.ColumnOf(i), i);
            }

            columns.Turn();
        }

        for (int c = 0; c < items.Length; c++)
        {
            items[c] = columns.Content[columns.Start[c]..columns.Start[c + 1]];
            Medians.SortBy(items[c], i => at[i] < 0 ? ColumnOrder.Whole / 2 : at[i], wiring, c);
        }

        return new ColumnOrder(wiring, items, sideOrder);
    }
}
