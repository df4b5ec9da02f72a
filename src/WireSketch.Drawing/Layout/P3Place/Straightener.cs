using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// Moves single items, and chains of dummy nodes that lie straight, to where that takes a bend away; neighbors are pushed along.
/// </summary>
internal sealed class Straightener
{
    private const int BendPrice = 24, Rounds = 3, LongestPush = 80, LongestChain = 24, LongestRigid = 24;

    private readonly ColumnOrder order;
    private readonly Frames frames;
    private readonly Attraction attraction;
    private readonly int[][] separations;
    private readonly int[] ordinates, columnOf, index, target, stamp;
    private readonly bool[] open;
    private readonly int limit;
    private readonly List<int> moved = [], pending = [], chain = [], shifts = [];
    private int round;

    private enum Route
    {
        Alone,
        Chain,
        Rigid,
    }

    public Straightener(ColumnOrder order, Frames frames, Attraction attraction, int[][] separations, int[] y, int height)
    {
        this.order = order;
        this.frames = frames;
        this.attraction = attraction;
        this.separations = separations;
        ordinates = y;
        limit = height;
        int items = y.Length;
        columnOf = new int[items];
        index = new int[items];
        target = new int[items];
        stamp = new int[items];
        open = new bool[items];
        Array.Fill(open, true);
        for (int c = 0; c < order.Items.Length; c++)
        {
            for (int k = 0; k < order.Items[c].Length; k++)
            {
                (columnOf[order.Items[c][k]], index[order.Items[c][k]]) = (c, k);
            }
        }
    }

    public void Run()
    {
        for (int round = 0; round < Rounds; round++)
        {
            bool still = true;
            foreach (int[] column in order.Items)
            {
                foreach (int item in column)
                {
                    if (open[item])
                    {
                        open[item] = false;
                        still &= !Improve(item);
                    }
                }
            }

            if (still)
            {
                break;
            }
        }
    }

    private bool Improve(int item)
    {
        FindChain(item);
        shifts.Clear();
        foreach (int o in chain)
        {
            for (int k = attraction.Start[o]; k < attraction.Start[o + 1]; k++)
            {
                int d = Gap(k, o);
                if (d != 0 && !shifts.Contains(d))
                {
                    shifts.Add(d);
                }
            }
        }

        shifts.Sort((a, b) => Math.Abs(a) != Math.Abs(b) ? Math.Abs(a).CompareTo(Math.Abs(b)) : a.CompareTo(b));
        long best = 0;
        int bestShift = 0;
        var bestWay = Route.Alone;
        for (var way = Route.Alone; way <= Route.Rigid && (way < Route.Rigid || best == 0); way++)
        {
            if (way == Route.Chain && chain.Count == 1)
            {
                continue;
            }

            foreach (int shift in shifts)
            {
                if ((way < Route.Rigid || Math.Abs(shift) <= LongestRigid) && Try(shift, way))
                {
                    long gain = Change();
                    if (gain < best)
                    {
                        (best, bestShift, bestWay) = (gain, shift, way);
                    }
                }
            }
        }

        if (best == 0)
        {
            return false;
        }

        Try(bestShift, bestWay);
        foreach (int i in moved)
        {
            ordinates[i] = target[i];
            Reopen(i);
        }

        return true;
    }

    /// <summary>What moved, its partners and its neighbors may now find better places.</summary>
    private void Reopen(int item)
    {
        int[] items = order.Items[columnOf[item]];
        int at = index[item];
        open[item] = true;
        open[items[Math.Max(0, at - 1)]] = true;
        open[items[Math.Min(items.Length - 1, at + 1)]] = true;
        for (int k = attraction.Start[item]; k < attraction.Start[item + 1]; k++)
        {
            open[attraction.Other[k]] = true;
        }
    }

    private int Gap(int k, int item) =>
        ordinates[attraction.Other[k]] + frames.Dy[attraction.Theirs[k]] - ordinates[item] - frames.Dy[attraction.Mine[k]];

    private void FindChain(int item)
    {
        chain.Clear();
        chain.Add(item);
        if (!order.Graph.IsDummy(item))
        {
            return;
        }

        for (int i = 0; i < chain.Count && chain.Count < LongestChain; i++)
        {
            int o = chain[i];
            for (int k = attraction.Start[o]; k < attraction.Start[o + 1]; k++)
            {
                int q = attraction.Other[k];
                if (order.Graph.IsDummy(q) && Gap(k, o) == 0 && !chain.Contains(q))
                {
                    chain.Add(q);
                }
            }
        }
    }

    /// <summary>
    /// Moves an item, or its chain, and pushes what is in the way; a rigid move also takes along what lies straight with anything moved.
    /// </summary>
    private bool Try(int shift, Route way)
    {
        round++;
        moved.Clear();
        pending.Clear();
        int count = way == Route.Chain ? chain.Count : 1, step = shift < 0 ? -1 : 1;
        for (int i = 0; i < count; i++)
        {
            Move(chain[i], ordinates[chain[i]] + shift);
        }

        for (int i = 0; i < pending.Count; i++)
        {
            if (pending.Count > LongestPush || !Push(pending[i], step))
            {
                return false;
            }

            if (way == Route.Rigid)
            {
                TakeAlong(pending[i], step);
            }
        }

        return true;
    }

    private bool Push(int item, int step)
    {
        int c = columnOf[item];
        int[] items = order.Items[c], tops = separations[c];
        for (int k = index[item] + step; k >= 0 && k < items.Length; k += step)
        {
            int bound = Now(items[k - step]) + tops[k] - tops[k - step];
            if (step < 0 ? Now(items[k]) <= bound : Now(items[k]) >= bound)
            {
                break;
            }

            Move(items[k], bound);
            if (pending.Count > LongestPush)
            {
                return false;
            }
        }

        return step < 0 ? Now(items[0]) >= tops[0] : Now(items[^1]) + frames.Down[items[^1]] <= limit;
    }

    private void TakeAlong(int item, int step)
    {
        int by = target[item] - ordinates[item];
        for (int k = attraction.Start[item]; k < attraction.Start[item + 1]; k++)
        {
            int other = attraction.Other[k], y = ordinates[other] + by;
            if (attraction.Across[k] && Gap(k, item) == 0 && (step < 0 ? Now(other) > y : Now(other) < y))
            {
                Move(other, y);
            }
        }
    }

    private void Move(int item, int y)
    {
        if (stamp[item] != round)
        {
            stamp[item] = round;
            moved.Add(item);
        }

        target[item] = y;
        pending.Add(item);
    }

    private int Now(int item) => stamp[item] == round ? target[item] : ordinates[item];

    /// <summary>Each pull between two moved items is met twice, each between a moved and a still one once: so those count double.</summary>
    private long Change()
    {
        long sum = 0;
        foreach (int i in moved)
        {
            for (int k = attraction.Start[i]; k < attraction.Start[i + 1]; k++)
            {
                int other = attraction.Other[k], dy = frames.Dy[attraction.Theirs[k]] - frames.Dy[attraction.Mine[k]];
                int was = Math.Abs(ordinates[other] - ordinates[i] + dy), now = Math.Abs(Now(other) - target[i] + dy);
                int bend = attraction.Across[k] ? BendPrice : 0;
                long change = now - was + (now != 0 ? bend : 0) - (was != 0 ? bend : 0);
                sum += change * attraction.Weight[k] * (stamp[other] == round ? 1 : 2);
            }
        }

        return sum;
    }
}
