using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>What each item is drawn to: for every piece at it, the other item, on which side it lies, and how strongly it pulls.</summary>
internal sealed class Attraction
{
    private Attraction(int items, int pulls)
    {
        Start = new int[items + 1];
        Other = new int[pulls];
        Mine = new int[pulls];
        Theirs = new int[pulls];
        Weight = new int[pulls];
        ToRight = new bool[pulls];
        Across = new bool[pulls];
    }

    /// <summary>First pull of each item; one entry more than items.</summary>
    public int[] Start { get; }
    public int[] Other { get; }

    /// <summary>The item's own node, and the other's.</summary>
    public int[] Mine { get; }
    public int[] Theirs { get; }
    public int[] Weight { get; }

    /// <summary>True if the piece lies in the gutter to the item's right.</summary>
    public bool[] ToRight { get; }

    /// <summary>True if the piece could lie straight.</summary>
    public bool[] Across { get; }

    public static Attraction Of(ColumnOrder order)
    {
        var w = order.Wiring;
        var counts = new int[w.Items + 1];
        int total = 0;
        for (int e = 0; e < w.Pieces; e++)
        {
            int a = w.NodeItem[w.Piece[e].A], b = w.NodeItem[w.Piece[e].B];
            if (a != b)
            {
                counts[a]++;
                counts[b]++;
                total += 2;
            }
        }

        var pull = new Attraction(w.Items, total);
        for (int i = 0; i < w.Items; i++)
        {
            pull.Start[i + 1] = pull.Start[i] + counts[i];
        }

        int[] fill = pull.Start.AsSpan(0, w.Items).ToArray();
        for (int e = 0; e < w.Pieces; e++)
        {
            int na = w.Piece[e].A, nb = w.Piece[e].B, a = w.NodeItem[na], b = w.NodeItem[nb];
            if (a == b)
            {
                continue;
            }

            bool across = w.Piece[e].Shape == SegmentShape.Across;
            int weight = w.Piece[e].Links * (across ? 6 : 2) * (w.Piece[e].Half > 3 ? 3 : 2) * (w.IsLane(a) && w.IsLane(b) ? 2 : 1);
            Put(a, na, b, nb);
            Put(b, nb, a, na);

            void Put(int me, int mine, int other, int theirs)
            {
                int k = fill[me]++;
                pull.Other[k] = other;
                pull.Mine[k] = mine;
                pull.Theirs[k] = theirs;
                pull.Weight[k] = weight;
                pull.ToRight[k] = !w.NodeOnRight[mine];
                pull.Across[k] = across;
            }
        }

        return pull;
    }
}
