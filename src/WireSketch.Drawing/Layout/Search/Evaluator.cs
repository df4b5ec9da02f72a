using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;
using WireSketch.Drawing.Layout.P3Place;
using WireSketch.Drawing.Layout.P4Route;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Takes an order through places, tracks and labels to a price.</summary>
internal sealed class Evaluator(Page page, GroupingCost grouping, OrientationCost orientation, StabilityCost? stability)
{
    /// <summary>How much higher than its fullest column a sheet may be, in tenths.</summary>
    private const int MostHeight = 16;

    /// <summary>
    /// Sifts and completes a trial. Null if it is sure to cost more than <paramref name="limit"/>, or likely to: its
    /// crossings are known once it is sifted, and the rest is seldom an eighth less than it was.
    /// </summary>
    public Candidate? Judge(LayoutTrial trial, long limit, Candidate current, bool near = false)
    {
        Orderer.Sift(trial.Order, 3, trial.Changed);
        long rest = Math.Max(0, current.Price - ((long)current.Sheet.Routed.Crossings * Pricing.Crossing));
        long least = ((long)Crossing.Count(trial.Order) * Pricing.Crossing) + (rest * 7 / 8);
        return least > limit ? null : near ? Near(trial.Choices, trial.Order, limit, current) : Complete(trial.Choices, trial.Order, limit);
    }

    /// <summary>Places an ordered sheet close to another.</summary>
    private Candidate? Near(Choices choices, ColumnOrder order, long limit, Candidate other)
    {
        long standing = grouping.Price(order.Graph.Columns) + orientation.Price(choices) + (stability?.Price(order) ?? 0);
        var routed = Router.Route(Placer.PlaceNear(order, other.Sheet.Placed));
        if (Pricing.Rough(routed) + standing > limit)
        {
            return null;
        }

        var sheet = Labeler.Label(routed, 0);
        return new Candidate { Choices = choices, Order = order, Sheet = sheet, Price = Pricing.Of(sheet, page) + standing };
    }

    /// <summary>
    /// Places an ordered sheet, also in the height that the page leaves free, and one too full for the page with room to lie straight,
    /// and keeps the best. Null if it is sure to cost more than <paramref name="limit"/>.
    /// </summary>
    public Candidate? Complete(Choices choices, ColumnOrder order, long limit)
    {
        long standing = grouping.Price(order.Graph.Columns) + orientation.Price(choices) + (stability?.Price(order) ?? 0);
        limit -= standing;
        var routed = Router.Route(Placer.Place(order, 0));
        if (Pricing.Rough(routed) > limit + Pricing.Crossing)
        {
            return null;
        }

        var sheet = Labeler.Label(routed, 0);
        long price = Pricing.Of(sheet, page);
        if (price > limit + (3 * Pricing.Crossing))
        {
            return null;
        }

        int least = routed.Placed.LeastHeight, most = least * MostHeight / 10;
        int free = Math.Min(most, (int)((long)sheet.Width * page.Height / page.Width) - (sheet.Height - routed.Placed.Height));
        foreach (int height in page.IsFull ? (ReadOnlySpan<int>)[free, most] : [free])
        {
            if (height > least)
            {
                var taller = Labeler.Label(Router.Route(Placer.Place(order, height)), 0);
                long price2 = Pricing.Of(taller, page);
                if (price2 < price)
                {
                    (sheet, price) = (taller, price2);
                }
            }
        }

        return new Candidate { Choices = choices, Order = order, Sheet = sheet, Price = price + standing };
    }
}
