using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>Where a side of a box has fewer terminals than the box has rows, chooses the rows that let most wires lie straight.</summary>
internal sealed class RowChooser(ColumnOrder order, Frames frames, Attraction attraction, int[] ordinates)
{
    private const int BendPrice = 24, Far = 60;

    public void Choose()
    {
        for (int b = 0; b < order.Graph.Model.Bodies; b++)
        {
            for (int side = 0; side < 2; side++)
            {
                int spare = frames.SpareRows[(2 * b) + side];
                if (spare <= 0)
                {
                    continue;
                }

                int best = 0;
                long bestPrice = long.MaxValue;
                for (int rows = 0; rows <= spare; rows++)
                {
                    long price = Price(b, side, (rows - frames.Shift[(2 * b) + side]) * frames.Pitch);
                    if (price < bestPrice)
                    {
                        (best, bestPrice) = (rows, price);
                    }
                }

                if (best != frames.Shift[(2 * b) + side])
                {
                    frames.MoveRows(b, side, best);
                }
            }
        }
    }

    private long Price(int body, int side, int by)
    {
        var model = order.Graph.Model;
        long price = 0;
        for (int k = attraction.Start[body]; k < attraction.Start[body + 1]; k++)
        {
            int port = model.SlotPort[attraction.Mine[k]];
            if (Array.IndexOf(order.SideOrder[(2 * body) + side], port) < 0)
            {
                continue;
            }

            int mine = ordinates[body] + frames.Dy[attraction.Mine[k]];
            int off = Math.Abs(ordinates[attraction.Other[k]] + frames.Dy[attraction.Theirs[k]] - mine - by);
            price += attraction.Weight[k] * (Math.Min(Far, off) + (off != 0 ? BendPrice : 0));
        }

        return price;
    }
}
