using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;

namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>
/// Parts wires that would lie on each other: one enters a gutter from the left and another from the right at one ordinate,
/// and other wires forbid the order of tracks that keeps them apart. First single items give way by a step of the grid;
/// if that does not help, everything right of the gutter moves down by half a step, after which no two can meet.
/// </summary>
internal sealed class ClashRepair
{
    private const int Rounds = 12;

    private readonly Placement _placed;
    private readonly SegmentGraph _w;
    private readonly int[] _y, _column, _index;

    private ClashRepair(Placement placed)
    {
        _placed = placed;
        _w = placed.Wiring;
        _y = (int[])placed.Y.Clone();
        _column = new int[_y.Length];
        _index = new int[_y.Length];
        for (int c = 0; c < placed.Order.Items.Length; c++)
        {
            for (int k = 0; k < placed.Order.Items[c].Length; k++)
            {
                (_column[placed.Order.Items[c][k]], _index[placed.Order.Items[c][k]]) = (c, k);
            }
        }
    }

    /// <summary>The same sheet without clashes.</summary>
    public static RoutedSheet Repair(RoutedSheet routed)
    {
        for (int round = 0; round < Rounds && routed.Clashes.Count > 0; round++)
        {
            var repair = new ClashRepair(routed.Placed);
            foreach (var (left, right) in routed.Clashes)
            {
                repair.Part(left, right);
            }

            routed = Router.Route(repair.Settle());
        }

        while (routed.Clashes.Count > 0)
        {
            var repair = new ClashRepair(routed.Placed);
            repair.Offset(routed.Wiring.NodeGutter[routed.Clashes[0].Left]);
            routed = Router.Route(repair.Settle());
        }

        return routed;
    }

    private void Part(int left, int right)
    {
        if (NodeY(left) != NodeY(right))
        {
            return;
        }

        int bestItem = -1, bestStep = 0;
        long best = long.MaxValue;
        foreach (int item in (ReadOnlySpan<int>)[_w.NodeItem[left], _w.NodeItem[right]])
        {
            foreach (int step in (ReadOnlySpan<int>)[Measure.Grid, -Measure.Grid, 2 * Measure.Grid, -2 * Measure.Grid])
            {
                var moved = Moved(item, step);
                if (moved is null)
                {
                    continue;
                }

                long price = Price(moved) + Math.Abs(step);
                if (price < best)
                {
                    (best, bestItem, bestStep) = (price, item, step);
                }
            }
        }

        if (bestItem >= 0)
        {
            foreach (var (item, y) in Moved(bestItem, bestStep)!)
            {
                _y[item] = y;
            }
        }
    }

    private int NodeY(int node) => _y[_w.NodeItem[node]] + _placed.Frames.Dy[node];

    // What moves when an item does; null if it would go past the top.
    private Dictionary<int, int>? Moved(int item, int step)
    {
        int[] items = _placed.Order.Items[_column[item]];
        int k = _index[item], way = Math.Sign(step);
        var moved = new Dictionary<int, int> { [item] = _y[item] + step };
        for (int j = k + way; j >= 0 && j < items.Length; j += way)
        {
            int above = way > 0 ? items[j - 1] : items[j], below = way > 0 ? items[j] : items[j + 1];
            int sep = Measure.Up(_placed.Frames.Down[above] + _placed.Frames.Up[below]);
            int bound = moved[items[j - way]] + (way * sep);
            if (way > 0 ? _y[items[j]] >= bound : _y[items[j]] <= bound)
            {
                break;
            }

            moved[items[j]] = bound;
        }

        return way < 0 && moved.TryGetValue(items[0], out int y) && y < _placed.Frames.Up[items[0]] ? null : moved;
    }

    // Straight pieces that would bend, and meetings at one ordinate that might clash.
    private long Price(Dictionary<int, int> moved)
    {
        long price = 0;
        foreach (var (item, y) in moved)
        {
            for (int side = 0; side < 2; side++)
            {
                foreach (int p in _w.Beside(item, side))
                {
                    int a = _w.Piece[p].A, b = _w.Piece[p].B, mine = _w.NodeItem[a] == item ? a : b, other = mine == a ? b : a;
                    int otherY = (moved.TryGetValue(_w.NodeItem[other], out int to) ? to : _y[_w.NodeItem[other]]) + _placed.Frames.Dy[other];
                    int myY = y + _placed.Frames.Dy[mine];
                    price += NodeY(mine) == NodeY(other) && myY != otherY ? 100 * _w.Piece[p].Links : 0;
                    price += 30 * Meetings(mine, myY, _w.Piece[p].Net);
                }
            }
        }

        return price + moved.Count;
    }

    private int Meetings(int node, int y, int net)
    {
        int sum = 0;
        foreach (int p in _w.In(_w.NodeGutter[node]))
        {
            if (_w.Piece[p].Net != net)
            {
                sum += Meets(_w.Piece[p].A) || Meets(_w.Piece[p].B) ? 1 : 0;
            }
        }

        return sum;

        bool Meets(int other) => _w.NodeOnRight[other] != _w.NodeOnRight[node] && NodeY(other) == y;
    }

    private void Offset(int gutter)
    {
        for (int i = 0; i < _y.Length; i++)
        {
            if (_column[i] >= gutter)
            {
                _y[i] += Measure.Grid / 2;
            }
        }
    }

    private Placement Settle()
    {
        int bottom = _placed.Height;
        for (int i = 0; i < _y.Length; i++)
        {
            bottom = Math.Max(bottom, _y[i] + _placed.Frames.Down[i]);
        }

        return new Placement { Order = _placed.Order, Frames = _placed.Frames, Y = _y, Height = bottom, Room = _placed.Room, LeastHeight = _placed.LeastHeight };
    }
}
