using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>The order of everything from top to bottom: items in their columns, terminals on their sides.</summary>
internal sealed class ColumnOrder
{
    private const int KeyBits = 12, LeftKey = 256, RightKey = LeftKey, LowerKey = 3072;

    /// <summary>Positions within a column are counted as shares of this.</summary>
    public const int Whole = 1 << 20;

    /// <summary>Difference of the keys of neighboring items.</summary>
    public const int Step = 1 << KeyBits;

    private readonly int[] inner;

    public ColumnOrder(SegmentGraph graph, int[][] items, int[][] sideOrder)
    {
        (Graph, Items, SideOrder) = (graph, items, sideOrder);
        inner = new int[graph.NodeItem.Length];
        Key = new int[inner.Length];
        for (int b = 0; b < graph.Model.Bodies; b++)
        {
            SetInner(b);
        }

        SetKeys();
    }

    public SegmentGraph Graph { get; }

    /// <summary>Items of each column, top to bottom.</summary>
    public int[][] Items { get; }

    /// <summary>Ports of each side, top to bottom, as in <see cref="Choices.SideOrder"/>.</summary>
    public int[][] SideOrder { get; }

    /// <summary>For each node a number that grows down its wall.</summary>
    public int[] Key { get; }

    /// <summary>Where each item stands in its column, as a share of <see cref="Whole"/>.</summary>
    public int[] Positions()
    {
        int[] at = new int[Graph.Items];
        foreach (int[] column in Items)
        {
            for (int k = 0; k < column.Length; k++)
            {
                at[column[k]] = (int)(((2L * k) + 1) * Whole / (2 * column.Length));
            }
        }

        return at;
    }

    public void SetKeys()
    {
        foreach (int[] column in Items)
        {
            for (int k = 0; k < column.Length; k++)
            {
                SetKey(column[k], k);
            }
        }
    }

    public void SetKey(int item, int index)
    {
        int at = index << KeyBits;
        if (Graph.IsDummy(item))
        {
            int node = Graph.LeftNode(item - Graph.Model.Bodies);
            Key[node] = Key[node + 1] = at;
            return;
        }

        for (int s = Graph.Model.BodySlot[item]; s < Graph.Model.BodySlot[item + 1]; s++)
        {
            Key[s] = at | inner[s];
        }
    }

    /// <summary>Exchanges two neighboring ports of a side, both with a single row.</summary>
    public void ExchangeSlots(int s, int t)
    {
        (inner[s], inner[t]) = (inner[t], inner[s]);
        (Key[s], Key[t]) = (Key[t], Key[s]);
    }

    /// <summary>After the ports of a side have changed places.</summary>
    public void SetInner(int body)
    {
        var model = Graph.Model;
        SetSide(SideOrder[2 * body], LeftKey);
        SetSide(SideOrder[(2 * body) + 1], RightKey);
        SetEdge(PortSide.Top, 0);
        SetEdge(PortSide.Bottom, LowerKey);

        void SetSide(int[] ports, int key)
        {
            foreach (int p in ports)
            {
                for (int k = 0; k < model.PortSlots[p]; k++)
                {
                    inner[model.PortSlot[p] + k] = Math.Min(key++, LowerKey - 1);
                }
            }
        }

        // Wires that leave an edge to the left nest one way, those to the right the other; depth decides, as in EdgeTracks.
        void SetEdge(PortSide side, int key)
        {
            if (model.Ports(body, side).Length == 0)
            {
                return;
            }

            foreach (var (slot, depth) in EdgeTracks.Of(Graph, body, side))
            {
                inner[slot] = key + Math.Min(side == PortSide.Top ? 255 - depth : depth, 255);
            }
        }
    }

    /// <summary>A copy with one column sorted anew by the given positions.</summary>
    public ColumnOrder Resorted(int column, int[] at)
    {
        var copy = Copy();
        Medians.SortBy(copy.Items[column], i => at[i], Graph, column);
        copy.SetKeys();
        return copy;
    }

    public ColumnOrder Copy() =>
        new(Graph, Array.ConvertAll(Items, c => (int[])c.Clone()), Array.ConvertAll(SideOrder, c => (int[])c.Clone()));
}
