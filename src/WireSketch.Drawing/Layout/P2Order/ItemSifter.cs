namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>
/// Moves each item of a column to its best place, with crossings counted exactly by exchanges of neighbors, in which only
/// pairs of segments of the two change. At a wall the dummy nodes of one pass-through move as a block.
/// </summary>
internal sealed class ItemSifter(ColumnOrder order, bool dummiesOnly = false)
{
    /// <summary>Columns longer than this are sifted within a window.</summary>
    public const int WindowFrom = 60;
    private const int Window = 24;

    private int[] items = [];
    private int[] at = [], place = [], known = [];

    /// <summary>Sifts a column once; returns the crossings gained.</summary>
    public int Sift(int column)
    {
        items = order.Items[column];
        if (items.Length < 2)
        {
            return 0;
        }

        return order.Graph.Columns.IsWall[column] && HasBlocks() ? SiftBlocks() : SiftItems();
    }

    private int SiftItems()
    {
        int n = items.Length, reach = n > WindowFrom ? Window : n, gain = 0;
        if (this.at.Length < order.Graph.Items)
        {
            this.at = new int[order.Graph.Items];
            place = new int[order.Graph.Items];
        }

        known = n <= WindowFrom ? new int[n * n] : [];
        Array.Fill(known, int.MinValue);

        int[] turn = (int[])items.Clone();
        for (int k = 0; k < n; k++)
        {
            this.at[items[k]] = place[items[k]] = k;
        }

        foreach (int item in turn)
        {
            if (dummiesOnly && !order.Graph.IsDummy(item))
            {
                continue;
            }

            int start = this.at[item], k = start, best = 0, at = start, now = 0;
            int last = Math.Min(n - 1, start + reach), first = Math.Max(0, start - reach);
            while (k < last)
            {
                now += Swap(k++);
                if (now < best)
                {
                    (best, at) = (now, k);
                }
            }

            while (k > first)
            {
                now += Swap(--k);
                if (now < best || (now == best && Math.Abs(k - start) < Math.Abs(at - start)))
                {
                    (best, at) = (now, k);
                }
            }

            while (k < at)
            {
                Exchange(k++);
            }

            gain -= best;
        }

        return gain;
    }

    private int Swap(int k)
    {
        int change = Change(items[k], items[k + 1]);
        Exchange(k);
        return change;
    }

    /// <summary>
    /// What two items cost each other hangs on nothing else in the column, unless wires turn back at them; so it is worked out once.
    /// </summary>
    private int Change(int u, int v)
    {
        if (known.Length == 0 || order.Graph.ItemTurns[u] || order.Graph.ItemTurns[v])
        {
            return Crossing.Exchange(order, u, v, ColumnOrder.Step);
        }

        int n = items.Length, at = (place[u] * n) + place[v];
        if (known[at] == int.MinValue)
        {
            known[at] = Crossing.Exchange(order, u, v, ColumnOrder.Step);
            known[(place[v] * n) + place[u]] = -known[at];
        }

        return known[at];
    }

    private void Exchange(int k)
    {
        int u = items[k], v = items[k + 1];
        (items[k], items[k + 1]) = (v, u);
        (at[v], at[u]) = (k, k + 1);
        order.SetKey(v, k);
        order.SetKey(u, k + 1);
    }

    private int BundleOf(int item) => order.Graph.DummyBundle[item - order.Graph.Model.Bodies];

    private bool HasBlocks()
    {
        for (int k = 1; k < items.Length; k++)
        {
            if (BundleOf(items[k]) >= 0 && BundleOf(items[k]) == BundleOf(items[k - 1]))
            {
                return true;
            }
        }

        return false;
    }

    private int SiftBlocks()
    {
        var blocks = new List<int[]>();
        for (int k = 0; k < items.Length;)
        {
            int end = k + 1;
            while (end < items.Length && BundleOf(items[k]) >= 0 && BundleOf(items[end]) == BundleOf(items[k]))
            {
                end++;
            }

            blocks.Add(items[k..end]);
            k = end;
        }

        int gain = 0;
        foreach (int[] block in blocks.ToArray())
        {
            gain += SiftWithin(block, blocks);
            int start = blocks.IndexOf(block), k = start, best = 0, at = start, now = 0;
            while (k < blocks.Count - 1)
            {
                now += SwapBlocks(blocks, k++);
                if (now < best)
                {
                    (best, at) = (now, k);
                }
            }

            while (k > 0)
            {
                now += SwapBlocks(blocks, --k);
                if (now < best || (now == best && Math.Abs(k - start) < Math.Abs(at - start)))
                {
                    (best, at) = (now, k);
                }
            }

            while (k < at)
            {
                SwapBlocks(blocks, k++);
            }

            gain -= best;
        }

        return gain;
    }

    private int SiftWithin(int[] block, List<int[]> blocks)
    {
        int gain = 0;
        for (int pass = 1; pass < block.Length; pass++)
        {
            for (int k = 0; k + 1 < block.Length; k++)
            {
                int before = Crossing.Between(order, block[k], block[k + 1]);
                (block[k], block[k + 1]) = (block[k + 1], block[k]);
                Write(blocks);
                int after = Crossing.Between(order, block[k], block[k + 1]);
                if (after < before)
                {
                    gain += before - after;
                }
                else
                {
                    (block[k], block[k + 1]) = (block[k + 1], block[k]);
                    Write(blocks);
                }
            }
        }

        return gain;
    }

    private int SwapBlocks(List<int[]> blocks, int k)
    {
        int before = Pairs(blocks[k], blocks[k + 1]);
        (blocks[k], blocks[k + 1]) = (blocks[k + 1], blocks[k]);
        Write(blocks);
        return Pairs(blocks[k], blocks[k + 1]) - before;
    }

    private int Pairs(int[] us, int[] vs)
    {
        int sum = 0;
        foreach (int u in us)
        {
            foreach (int v in vs)
            {
                sum += Crossing.Between(order, u, v);
            }
        }

        return sum;
    }

    private void Write(List<int[]> blocks)
    {
        int k = 0;
        foreach (int[] block in blocks)
        {
            foreach (int item in block)
            {
                if (items[k] != item)
                {
                    items[k] = item;
                    order.SetKey(item, k);
                }

                k++;
            }
        }
    }
}
