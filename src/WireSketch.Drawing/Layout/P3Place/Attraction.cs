using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// What each item is drawn to: for every segment at it, the other item, on which side it lies, and how strongly it pulls.
/// </summary>
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

    /// <summary>True if the segment lies in the channel to the item's right.</summary>
    public bool[] ToRight { get; }

    /// <summary>True if the segment could lie straight.</summary>
    public bool[] Across { get; }

    public static Attraction Of(ColumnOrder order)
    {
        var w = order.Graph;
        var counts = new int[w.Items + 1];
        int total = 0;
        for (int e = 0; e < w.Segments; e++)
        {
            int a = w.NodeItem[w.Segment[e].A], b = w.NodeItem[w.Segment[e].B];
            if (a != b)
            {
                counts[a]++;
                counts[b]++;
                total += 2;
            }
        }

        var attraction = new Attraction(w.Items, total);
        for (int i = 0; i < w.Items; i++)
        {
            attraction.Start[i + 1] = attraction.Start[i] + counts[i];
        }

        int[] fill = attraction.Start.AsSpan(0, w.Items).ToArray();
        for (int e = 0; e < w.Segments; e++)
        {
            int na = w.Segment[e].A, nb = w.Segment[e].B, a = w.NodeItem[na], b = w.NodeItem[nb];
            if (a == b)
            {
                continue;
            }

            bool across = w.Segment[e].Shape == SegmentShape.Across;
            int weight = w.Segment[e].Links * (across ? 6 : 2) * (w.Segment[e].Half > 3 ? 3 : 2) * (w.IsDummy(a) && w.IsDummy(b) ? 2 : 1);
            Put(a, na, b, nb);
            Put(b, nb, a, na);

            void Put(int me, int mine, int other, int theirs)
            {
                int k = fill[me]++;
                attraction.Other[k] = other;
                attraction.Mine[k] = mine;
                attraction.Theirs[k] = theirs;
                attraction.Weight[k] = weight;
                attraction.ToRight[k] = !w.NodeOnRight[mine];
                attraction.Across[k] = across;
            }
        }

        return attraction;
    }
}
