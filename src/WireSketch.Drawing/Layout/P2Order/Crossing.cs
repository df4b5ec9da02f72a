using System.Runtime.CompilerServices;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>Whether two pieces of a gutter must cross, told from the order of their ends alone.</summary>
internal static class Crossing
{
    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    public static int Of(Wiring w, int[] key, int e, int f)
    {
        if (w.PieceNet[e] == w.PieceNet[f])
        {
            return 0;
        }

        int a = key[w.PieceA[e]], b = key[w.PieceB[e]], c = key[w.PieceA[f]], d = key[w.PieceB[f]];
        var te = w.PieceShape[e];
        var tf = w.PieceShape[f];
        bool cross;
        if (te == PieceShape.Across)
        {
            if (tf == PieceShape.Across)
            {
                cross = (a < c && b > d) || (a > c && b < d);
            }
            else
            {
                int x = tf == PieceShape.TurnLeft ? a : b;
                cross = (c < x) != (d < x);
            }
        }
        else if (tf == PieceShape.Across)
        {
            int x = te == PieceShape.TurnLeft ? c : d;
            cross = (a < x) != (b < x);
        }
        else if (te != tf)
        {
            return 0;
        }
        else
        {
            int lo = Math.Min(a, b), hi = Math.Max(a, b);
            cross = (lo < c && c < hi) != (lo < d && d < hi);
        }

        return cross ? w.PieceLinks[e] * w.PieceLinks[f] : 0;
    }

    /// <summary>Crossings of all pieces of a sheet, by order.</summary>
    public static int Count(ColumnOrder order)
    {
        var w = order.Wiring;
        int sum = 0;
        for (int g = 0; g <= w.Columns.Count; g++)
        {
            var pieces = w.In(g);
            for (int i = 1; i < pieces.Length; i++)
            {
                for (int j = 0; j < i; j++)
                {
                    sum += Of(w, order.Key, pieces[i], pieces[j]);
                }
            }
        }

        return sum;
    }

    /// <summary>Crossings between the pieces of two items, each counted on the side where both have pieces.</summary>
    public static int Between(ColumnOrder order, int u, int v)
    {
        var w = order.Wiring;
        int sum = 0;
        for (int side = 0; side < 2; side++)
        {
            var us = w.Beside(u, side);
            var vs = w.Beside(v, side);
            foreach (int e in us)
            {
                foreach (int f in vs)
                {
                    if (e != f)
                    {
                        sum += Of(w, order.Key, e, f);
                    }
                }
            }
        }

        return sum;
    }
}
