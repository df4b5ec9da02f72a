using System.Runtime.CompilerServices;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Whether two segments of a channel must cross, told from the order of their ends alone.</summary>
internal static class Crossing
{
    public static int Of(WireSegment[] segments, int[] key, int e, int f)
    {
        ref readonly var pe = ref segments[e];
        ref readonly var pf = ref segments[f];
        return pe.Net == pf.Net ? 0 : Of(pe, pf, key[pe.A], key[pe.B], key[pf.A], key[pf.B]);
    }

    private static int Of(in WireSegment e, in WireSegment f, int a, int b, int c, int d)
    {
        bool cross;
        if (e.Shape == SegmentShape.Across)
        {
            if (f.Shape == SegmentShape.Across)
            {
                cross = (a < c && b > d) || (a > c && b < d);
            }
            else
            {
                int x = f.Shape == SegmentShape.TurnLeft ? a : b;
                cross = (c < x) != (d < x);
            }
        }
        else if (f.Shape == SegmentShape.Across)
        {
            int x = e.Shape == SegmentShape.TurnLeft ? c : d;
            cross = (a < x) != (b < x);
        }
        else if (e.Shape != f.Shape)
        {
            return 0;
        }
        else
        {
            int lo = Math.Min(a, b), hi = Math.Max(a, b);
            cross = (lo < c && c < hi) != (lo < d && d < hi);
        }

        return cross ? e.Links * f.Links : 0;
    }

    /// <summary>Crossings of all segments of a sheet, by order.</summary>
    public static int Count(ColumnOrder order)
    {
        var w = order.Graph;
        int sum = 0;
        for (int g = 0; g <= w.Columns.Count; g++)
        {
            var segments = w.In(g);
            for (int i = 1; i < segments.Length; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    sum += Of(w.Segment, order.Key, segments[i], segments[j]);
                }
            }
        }

        return sum;
    }

    /// <summary>Crossings between the segments of two items, each counted on the side where both have segments.</summary>
    public static int Between(ColumnOrder order, int u, int v)
    {
        var w = order.Graph;
        int sum = 0;
        for (int side = 0; side < 2; side++)
        {
            var us = w.Beside(u, side);
            var vs = w.Beside(v, side);
            foreach (int e in us)
            {
                foreach (int f in vs)
                {
                    sum += e == f ? 0 : Of(w.Segment, order.Key, e, f);
                }
            }
        }

        return sum;
    }

    /// <summary>
    /// How the crossings between two items change when the upper, u, and the lower, v, change places: for two segments that go
    /// across the order of their far ends decides; others are looked at with the ends where they would be.
    /// </summary>
    /// <param name="order">The order.</param>
    /// <param name="u">The upper item.</param>
    /// <param name="v">The item just below it.</param>
    /// <param name="step">Difference of their keys.</param>
    public static int Exchange(ColumnOrder order, int u, int v, int step)
    {
        var w = order.Graph;
        var segments = w.Segment;
        int[] key = order.Key;
        int change = 0;
        for (int side = 0; side < 2; side++)
        {
            var us = w.Beside(u, side);
            var vs = w.Beside(v, side);
            if (vs.Length == 0)
            {
                continue;
            }

            foreach (int i in us)
            {
                ref readonly var e = ref segments[i];
                int far = e.Shape != SegmentShape.Across ? 0 : key[side == 0 ? e.A : e.B];
                foreach (int j in vs)
                {
                    ref readonly var f = ref segments[j];
                    if (e.Net == f.Net)
                    {
                        continue;
                    }

                    if (e.Shape == SegmentShape.Across && f.Shape == SegmentShape.Across)
                    {
                        int other = key[side == 0 ? f.A : f.B];
                        change += far < other ? e.Links * f.Links : far > other ? -e.Links * f.Links : 0;
                    }
                    else if (i != j)
                    {
                        change += Of(e, f, Moved(e.A), Moved(e.B), Moved(f.A), Moved(f.B))
                            - Of(e, f, key[e.A], key[e.B], key[f.A], key[f.B]);
                    }
                }
            }
        }

        return change;

        [MethodImpl(MethodImplOptions.AggressiveInlining)]
        int Moved(int node)
        {
            int item = w.NodeItem[node];
            return key[node] + (item == u ? step : item == v ? -step : 0);
        }
    }
}
