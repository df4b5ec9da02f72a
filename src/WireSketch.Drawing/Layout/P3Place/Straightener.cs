using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>Moves single items, and chains of lanes that lie straight, to where that takes a bend away; neighbors are pushed along.</summary>
internal sealed class Straightener
{
    private const int BendPrice = 24, Rounds = 3, LongestPush = 80, LongestChain = 24, LongestRigid = 24;

    private readonly ColumnOrder _order;
    private readonly Frames _frames;
    private readonly Attraction _pull;
    private readonly int[][] _seps;
    private readonly int[] _y, _columnOf, _index, _new, _stamp;
    private readonly bool[] _open;
    private readonly int _limit;
    private readonly List<int> _moved = [], _pending = [], _chain = [], _shifts = [];
    private int _round;

    private enum Route
    {
        Alone,
        Chain,
        Rigid,
    }

    public Straightener(ColumnOrder order, Frames frames, Attraction pull, int[][] seps, int[] y, int height)
    {
        (_order, _frames, _pull, _seps, _y, _limit) = (order, frames, pull, seps, y, height);
        int items = y.Length;
        _columnOf = new int[items];
        _index = new int[items];
        _new = new int[items];
        _stamp = new int[items];
        _open = new bool[items];
        Array.Fill(_open, true);
        for (int c = 0; c < order.Items.Length; c++)
        {
            for (int k = 0; k < order.Items[c].Length; k++)
            {
                (_columnOf[order.Items[c][k]], _index[order.Items[c][k]]) = (c, k);
            }
        }
    }

    public void Run()
    {
        for (int round = 0; round < Rounds; round++)
        {
            bool still = true;
            foreach (int[] column in _order.Items)
            {
                foreach (int item in column)
                {
                    if (_open[item])
                    {
                        _open[item] = false;
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
        _shifts.Clear();
        foreach (int o in _chain)
        {
            for (int k = _pull.Start[o]; k < _pull.Start[o + 1]; k++)
            {
                int d = Gap(k, o);
                if (d != 0 && !_shifts.Contains(d))
                {
                    _shifts.Add(d);
                }
            }
        }

        _shifts.Sort((a, b) => Math.Abs(a) != Math.Abs(b) ? Math.Abs(a).CompareTo(Math.Abs(b)) : a.CompareTo(b));
        long best = 0;
        int bestShift = 0;
        var bestWay = Route.Alone;
        for (var way = Route.Alone; way <= Route.Rigid && (way < Route.Rigid || best == 0); way++)
        {
            if (way == Route.Chain && _chain.Count == 1)
            {
                continue;
            }

            foreach (int shift in _shifts)
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
        foreach (int i in _moved)
        {
            _y[i] = _new[i];
            Reopen(i);
        }

        return true;
    }

    // What moved, its partners and its neighbors may now find better places.
    private void Reopen(int item)
    {
        int[] items = _order.Items[_columnOf[item]];
        int at = _index[item];
        _open[item] = true;
        _open[items[Math.Max(0, at - 1)]] = true;
        _open[items[Math.Min(items.Length - 1, at + 1)]] = true;
        for (int k = _pull.Start[item]; k < _pull.Start[item + 1]; k++)
        {
            _open[_pull.Other[k]] = true;
        }
    }

    private int Gap(int k, int item) => _y[_pull.Other[k]] + _frames.Dy[_pull.Theirs[k]] - _y[item] - _frames.Dy[_pull.Mine[k]];

    private void FindChain(int item)
    {
        _chain.Clear();
        _chain.Add(item);
        if (!_order.Wiring.IsLane(item))
        {
            return;
        }

        for (int i = 0; i < _chain.Count && _chain.Count < LongestChain; i++)
        {
            int o = _chain[i];
            for (int k = _pull.Start[o]; k < _pull.Start[o + 1]; k++)
            {
                int q = _pull.Other[k];
                if (_order.Wiring.IsLane(q) && Gap(k, o) == 0 && !_chain.Contains(q))
                {
                    _chain.Add(q);
                }
            }
        }
    }

    // Moves an item, or its chain, and pushes what is in the way; a rigid move also takes along what lies straight with anything moved.
    private bool Try(int shift, Route way)
    {
        _round++;
        _moved.Clear();
        _pending.Clear();
        int count = way == Route.Chain ? _chain.Count : 1, step = shift < 0 ? -1 : 1;
        for (int i = 0; i < count; i++)
        {
            Move(_chain[i], _y[_chain[i]] + shift);
        }

        for (int i = 0; i < _pending.Count; i++)
        {
            if (_pending.Count > LongestPush || !Push(_pending[i], step))
            {
                return false;
            }

            if (way == Route.Rigid)
            {
                TakeAlong(_pending[i], step);
            }
        }

        return true;
    }

    private bool Push(int item, int step)
    {
        int c = _columnOf[item];
        int[] items = _order.Items[c], seps = _seps[c];
        for (int k = _index[item] + step; k >= 0 && k < items.Length; k += step)
        {
            int bound = Now(items[k - step]) + seps[k] - seps[k - step];
            if (step < 0 ? Now(items[k]) <= bound : Now(items[k]) >= bound)
            {
                break;
            }

            Move(items[k], bound);
            if (_pending.Count > LongestPush)
            {
                return false;
            }
        }

        return step < 0 ? Now(items[0]) >= seps[0] : Now(items[^1]) + _frames.Down[items[^1]] <= _limit;
    }

    private void TakeAlong(int item, int step)
    {
        int by = _new[item] - _y[item];
        for (int k = _pull.Start[item]; k < _pull.Start[item + 1]; k++)
        {
            int other = _pull.Other[k], y = _y[other] + by;
            if (_pull.Across[k] && Gap(k, item) == 0 && (step < 0 ? Now(other) > y : Now(other) < y))
            {
                Move(other, y);
            }
        }
    }

    private void Move(int item, int y)
    {
        if (_stamp[item] != _round)
        {
            _stamp[item] = _round;
            _moved.Add(item);
        }

        _new[item] = y;
        _pending.Add(item);
    }

    private int Now(int item) => _stamp[item] == _round ? _new[item] : _y[item];

    // Each pull between two moved items is met twice, each between a moved and a still one once: so those count double.
    private long Change()
    {
        long sum = 0;
        foreach (int i in _moved)
        {
            for (int k = _pull.Start[i]; k < _pull.Start[i + 1]; k++)
            {
                int other = _pull.Other[k], dy = _frames.Dy[_pull.Theirs[k]] - _frames.Dy[_pull.Mine[k]];
                int was = Math.Abs(_y[other] - _y[i] + dy), now = Math.Abs(Now(other) - _new[i] + dy);
                int bend = _pull.Across[k] ? BendPrice : 0;
                long change = now - was + (now != 0 ? bend : 0) - (was != 0 ? bend : 0);
                sum += change * _pull.Weight[k] * (_stamp[other] == _round ? 1 : 2);
            }
        }

        return sum;
    }
}
