namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>
/// Orders the trunks of a gutter from left to right by insertion: each trunk in turn goes where it costs least against
/// all others. A cost belongs to an ordered pair: arms of the left trunk that go right past the other, and the reverse.
/// </summary>
internal sealed class TrackOrder
{
    /// <summary>Price of one crossing; smaller sums are matters of taste.</summary>
    private const int CrossingPrice = 64, NearPrice = 4, ClashPrice = 1 << 20, Rounds = 12, Near = 6;

    private readonly List<VerticalSegment> _trunks;
    private readonly int[] _cost;
    private readonly int _n;

    public TrackOrder(List<VerticalSegment> trunks)
    {
        _trunks = trunks;
        _n = trunks.Count;
        _cost = new int[_n * _n];
        for (int i = 0; i < _n; i++)
        {
            for (int j = 0; j < _n; j++)
            {
                if (i != j && trunks[i].Upper <= trunks[j].Lower + Near && trunks[j].Upper <= trunks[i].Lower + Near)
                {
                    _cost[(i * _n) + j] = Cost(trunks[i], trunks[j]);
                }
            }
        }
    }

    public int Crossings { get; private set; }

    public List<(int Left, int Right)> Clashes { get; } = [];

    public int[] Sort()
    {
        var order = new List<int>(_n);
        for (int i = 0; i < _n; i++)
        {
            order.Add(i);
        }

        bool better = true;
        for (int round = 0; better && round < Rounds; round++)
        {
            better = false;
            for (int v = 0; v < _n; v++)
            {
                better |= Reinsert(order, v);
            }
        }

        for (int p = 0; p < _n; p++)
        {
            for (int q = p + 1; q < _n; q++)
            {
                int cost = _cost[(order[p] * _n) + order[q]];
                Crossings += cost % ClashPrice / CrossingPrice;
                if (cost >= ClashPrice)
                {
                    NoteClash(_trunks[order[p]], _trunks[order[q]]);
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
            now += _cost[(v * _n) + u];
        }

        long best = now, here = now;
        int at = 0;
        for (int p = 1; p <= order.Count; p++)
        {
            int u = order[p - 1];
            now += _cost[(u * _n) + v] - _cost[(v * _n) + u];
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
