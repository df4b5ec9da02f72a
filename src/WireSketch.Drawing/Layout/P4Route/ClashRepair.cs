using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;

namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>
/// Parts wires that would lie on each other: one enters a channel from the left and another from the right at one ordinate,
/// and other wires forbid the order of tracks that keeps them apart. First single items give way by a step of the grid;
/// if that does not help, everything right of the channel moves down by half a step, after which no two can meet.
/// </summary>
internal sealed class ClashRepair
{
    private const int Rounds = 12;

    private readonly Placement placed;
    private readonly SegmentGraph graph;
    private readonly int[] ordinates, column, index;

    private ClashRepair(Placement placed)
    {
        this.placed = placed;
        graph = placed.Graph;
        ordinates = (int[])placed.Y.Clone();
        column = new int[ordinates.Length];
        index = new int[ordinates.Length];
        for (int c = 0; c < placed.Order.Items.Length; c++)
        {
            for (int k = 0; k < placed.Order.Items[c].Length; k++)
            {
                (column[placed.Order.Items[c][k]], index[placed.Order.Items[c][k]]) = (c, k);
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
            repair.Offset(routed.Graph.NodeChannel[routed.Clashes[0].Left]);
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
        foreach (int item in (ReadOnlySpan<int>)[graph.NodeItem[left], graph.NodeItem[right]])
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
                ordinates[item] = y;
            }
        }
    }

    private int NodeY(int node) => ordinates[graph.NodeItem[node]] + placed.Frames.Dy[node];

    /// <summary>What moves when an item does; null if it would go past the top.</summary>
    private Dictionary<int, int>? Moved(int item, int step)
    {
        int[] items = placed.Order.Items[column[item]];
        int k = index[item], way = Math.Sign(step);
        var moved = new Dictionary<int, int> { [item] = ordinates[item] + step };
        for (int j = k + way; j >= 0 && j < items.Length; j += way)
        {
            int above = way > 0 ? items[j - 1] : items[j], below = way > 0 ? items[j] : items[j + 1];
            int sep = Measure.Up(placed.Frames.Down[above] + placed.Frames.Up[below]);
            int bound = moved[items[j - way]] + (way * sep);
            if (way > 0 ? ordinates[items[j]] >= bound : ordinates[items[j]] <= bound)
            {
                break;
            }

            moved[items[j]] = bound;
        }

        return way < 0 && moved.TryGetValue(items[0], out int y) && y < placed.Frames.Up[items[0]] ? null : moved;
    }

    /// <summary>Straight segments that would bend, and meetings at one ordinate that might clash.</summary>
    private long Price(Dictionary<int, int> moved)
    {
        long price = 0;
        foreach (var (item, y) in moved)
        {
            for (int side = 0; side < 2; side++)
            {
                foreach (int p in graph.Beside(item, side))
                {
                    int a = graph.Segment[p].A, b = graph.Segment[p].B, mine = graph.NodeItem[a] == item ? a : b, other = mine == a ? b : a;
                    int otherY =
                        (moved.TryGetValue(graph.NodeItem[other], out int to) ? to : ordinates[graph.NodeItem[other]])
                            + placed.Frames.Dy[other];
                    int myY = y + placed.Frames.Dy[mine];
                    price += NodeY(mine) == NodeY(other) && myY != otherY ? 100 * graph.Segment[p].Links : 0;
                    price += 30 * Meetings(mine, myY, graph.Segment[p].Net);
                }
            }
        }

        return price + moved.Count;
    }

    private int Meetings(int node, int y, int net)
    {
        int sum = 0;
        foreach (int p in graph.In(graph.NodeChannel[node]))
        {
            if (graph.Segment[p].Net != net)
            {
                sum += Meets(graph.Segment[p].A) || Meets(graph.Segment[p].B) ? 1 : 0;
            }
        }

        return sum;

        bool Meets(int other) => graph.NodeOnRight[other] != graph.NodeOnRight[node] && NodeY(other) == y;
    }

    private void Offset(int channel)
    {
        for (int i = 0; i < ordinates.Length; i++)
        {
            if (column[i] >= channel)
            {
                ordinates[i] += Measure.Grid / 2;
            }
        }
    }

    private Placement Settle()
    {
        int bottom = placed.Height;
        for (int i = 0; i < ordinates.Length; i++)
        {
            bottom = Math.Max(bottom, ordinates[i] + placed.Frames.Down[i]);
        }

        return new Placement
        {
            Order = placed.Order,
            Frames = placed.Frames,
            Y = ordinates,
            Height = bottom,
            Room = placed.Room,
            LeastHeight = placed.LeastHeight
        };
    }
}
