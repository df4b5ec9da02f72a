namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>
/// Orders the vertical segments of a channel from left to right by insertion: each vertical segment in turn goes where it costs least
/// against
/// all others. A cost belongs to an ordered pair: arms of the left vertical segment that go right past the other, and the reverse.
/// </summary>
internal sealed class TrackOrder
{
    /// <summary>Price of one crossing; smaller sums are matters of taste.</summary>
    private const int CrossingPrice = 64, NearPrice = 4, ClashPrice = 1 << 20, Rounds = 12, Near = 6;

    private readonly List<VerticalSegment> verticals;
    private readonly int[] cost;
    private readonly int size;

    public TrackOrder(List<VerticalSegment> verticals)
    {
        this.verticals = verticals;
        size = verticals.Count;
        cost = new int[size * size];
        for (int i = 0; i < size; i++)
        {
            for (int j = 0; j < size; j++)
            {
                if (i != j && verticals[i].Upper <= verticals[j].Lower + Near && verticals[j].Upper <= verticals[i].Lower + Near)
                {
                    cost[(i * size) + j] = Cost(verticals[i], verticals[j]);
                }
            }
        }
    }

    public int Crossings { get; private set; }

    public List<(int Left, int Right)> Clashes { get; } = [];

    public int[] Sort()
    {
        var order = new List<int>(size);
        for (int i = 0; i < size; i++)
        {
            order.Add(i);
        }

        bool better = true;
        for (int round = 0; better && round < Rounds; round++)
        {
            better = false;
            for (int v = 0; v < size; v++)
            {
                better |= Reinsert(order, v);
            }
        }

        for (int p = 0; p < size; p++)
        {
            for (int q = p + 1; q < size; q++)
            {
                int cost = this.cost[(order[p] * size) + order[q]];
                Crossings += cost % ClashPrice / CrossingPrice;
                if (cost >= ClashPrice)
                {
                    NoteClash(verticals[order[p]], verticals[order[q]]);
                }
            }
        }

        return [.. order];
    }

    private bool Reinsert(List<int> order, int v)
    {
        int k = order.IndexOf(v);
        order.RemoveAt(k);
        long now = 0;
        foreach (int u in order)
        {
            now += cost[(v * size) + u];
        }

        long best = now, here = now;
        int at = 0;
        for (int p = 1; p <= order.Count; p++)
        {
            int u = order[p - 1];
            now += cost[(u * size) + v] - cost[(v * size) + u];
            if (p == k)
            {
                here = now;
            }

            if (now < best)
            {
                (best, at) = (now, p);
            }
        }

        order.Insert(best < here ? at : k, v);
        return best < here;
    }

    private static int Cost(VerticalSegment left, VerticalSegment right)
    {
        int cost = 0;
        foreach (var (_, y, links) in left.Right)
        {
            cost += CrossingPrice * links * right.Across(y);
            foreach (var (_, other, _) in right.Left)
            {
                int gap = Math.Abs(y - other);
                cost += gap == 0 ? ClashPrice : gap < Near ? NearPrice : 0;
            }
        }

        foreach (var (_, y, links) in right.Left)
        {
            cost += CrossingPrice * links * left.Across(y);
        }

        return cost;
    }

    private void NoteClash(VerticalSegment left, VerticalSegment right)
    {
        foreach (var (node, y, _) in left.Right)
        {
            foreach (var (other, y2, _) in right.Left)
            {
                if (y == y2)
                {
                    Clashes.Add((other, node));
                }
            }
        }
    }
}
