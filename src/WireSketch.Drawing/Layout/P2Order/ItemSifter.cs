namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>
/// Moves each item of a column to its best place, with crossings counted exactly by exchanges of neighbors, in which only
/// pairs of pieces of the two change. At a wall the lanes of one pass-through move as a block.
/// </summary>
internal sealed class ItemSifter(ColumnOrder order, bool lanesOnly = false)
{
    /// <summary>Columns longer than this are sifted within a window.</summary>
    public const int WindowFrom = 60;
    private const int Window = 24;

    private int[] _items = [];
    private int[] _at = [], _place = [], _known = [];

    /// <summary>Sifts a column once; returns the crossings gained.</summary>
    public int Sift(int column)
    {
        _items = order.Items[column];
        if (_items.Length < 2)
        {
            return 0;
        }

        return order.Wiring.Columns.IsWall[column] && HasBlocks() ? SiftBlocks() : SiftItems();
    }

    private int SiftItems()
    {
        int n = _items.Length, reach = n > WindowFrom ? Window : n, gain = 0;
        if (_at.Length < order.Wiring.Items)
        {
            _at = new int[order.Wiring.Items];
            _place = new int[order.Wiring.Items];
        }

        _known = n <= WindowFrom ? new int[n * n] : [];
        Array.Fill(_known, int.MinValue);

        int[] turn = (int[])_items.Clone();
        for (int k = 0; k < n; k++)
        {
            _at[_items[k]] = _place[_items[k]] = k;
        }

        foreach (int item in turn)
        {
            if (lanesOnly && !order.Wiring.IsLane(item))
            {
                continue;
            }

            int start = _at[item], k = start, best = 0, at = start, now = 0;
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
        int change = Change(_items[k], _items[k + 1]);
        Exchange(k);
        return change;
    }

    // What two items cost each other hangs on nothing else in the column, unless wires turn back at them; so it is worked out once.
    private int Change(int u, int v)
    {
        if (_known.Length == 0 || order.Wiring.ItemTurns[u] || order.Wiring.ItemTurns[v])
        {
            return Crossing.Exchange(order, u, v, ColumnOrder.Step);
        }

        int n = _items.Length, at = (_place[u] * n) + _place[v];
        if (_known[at] == int.MinValue)
        {
            _known[at] = Crossing.Exchange(order, u, v, ColumnOrder.Step);
            _known[(_place[v] * n) + _place[u]] = -_known[at];
        }

        return _known[at];
    }

    private void Exchange(int k)
    {
        int u = _items[k], v = _items[k + 1];
        (_items[k], _items[k + 1]) = (v, u);
        (_at[v], _at[u]) = (k, k + 1);
        order.SetKey(v, k);
        order.SetKey(u, k + 1);
    }

    private int BundleOf(int item) => order.Wiring.LaneBundle[item - order.Wiring.Model.Bodies];

    private bool HasBlocks()
    {
        for (int k = 1; k < _items.Length; k++)
        {
            if (BundleOf(_items[k]) >= 0 && BundleOf(_items[k]) == BundleOf(_items[k - 1]))
            {
                return true;
            }
        }

        return false;
    }

    private int SiftBlocks()
    {
        var blocks = new List<int[]>();
        for (int k = 0; k < _items.Length;)
        {
            int end = k + 1;
            while (end < _items.Length && BundleOf(_items[k]) >= 0 && BundleOf(_items[end]) == BundleOf(_items[k]))
            {
                end++;
            }

            blocks.Add(_items[k..end]);
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
                if (_items[k] != item)
                {
                    _items[k] = item;
                    order.SetKey(item, k);
                }

                k++;
            }
        }
    }
}
