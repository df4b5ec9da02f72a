using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// Gives every item its ordinate. Column by column the items go as near as their order allows to what they are joined to:
/// an isotonic regression by pooling neighbors (pool adjacent violators, Ayer and others 1955) with weighted medians.
/// </summary>
internal sealed class Placer
{
    private const int Sweeps = 6;

    private readonly ColumnOrder _order;
    private readonly SegmentGraph _w;
    private readonly Frames _frames;
    private readonly Attraction _pull;
    private readonly int[][] _seps;
    private readonly int[] _total;
    private readonly int[] _y;
    private int[] _value = new int[64], _weight = new int[64], _value2 = new int[64], _weight2 = new int[64];

    private Placer(ColumnOrder order, Frames frames, Attraction pull)
    {
        _order = order;
        _w = order.Wiring;
        _frames = frames;
        _pull = pull;
        _y = new int[_w.Items];
        _seps = new int[order.Items.Length][];
        _total = new int[order.Items.Length];
        for (int c = 0; c < _seps.Length; c++)
        {
            int[] items = order.Items[c], s = _seps[c] = new int[items.Length];
            for (int k = 0; k < s.Length; k++)
            {
                s[k] = k == 0 ? Measure.Up(_frames.Up[items[0]]) : s[k - 1] + Measure.Up(_frames.Down[items[k - 1]] + _frames.Up[items[k]]);
            }

            _total[c] = s.Length == 0 ? 0 : s[^1] + _frames.Down[items[^1]];
            LeastHeight = Math.Max(LeastHeight, _total[c]);
        }
    }

    private int LeastHeight { get; }

    /// <summary>Places a sheet in the given height, or in the least that it needs if that is more; rows and devices are set apart by <paramref name="spread"/> beyond the usual.</summary>
    public static Placement Place(ColumnOrder order, int height, int spread = 0)
    {
        var placer = new Placer(order, Frames.Of(order, spread), Attraction.Of(order));
        return placer.Place(height);
    }

    /// <summary>Places a sheet that differs little from another, so that it stays close to it.</summary>
    public static Placement PlaceNear(ColumnOrder order, Placement other)
    {
        var placer = new Placer(order, Frames.Of(order), Attraction.Of(order));
        int height = Measure.Up(Math.Max(other.Room, placer.LeastHeight));
        new WarmStart(order, placer._frames, placer._pull, placer._y).From(other);
        for (int c = 0; c < placer._seps.Length; c++)
        {
            if (!placer.IsSettled(c, height))
            {
                placer.Fit(c, height, true, true);
            }
        }

        return placer.Straighten(height);
    }

    private bool IsSettled(int c, int height)
    {
        int[] items = _order.Items[c], seps = _seps[c];
        for (int k = 0; k < items.Length; k++)
        {
            if (k == 0 ? _y[items[0]] < seps[0] : _y[items[k]] - _y[items[k - 1]] < seps[k] - seps[k - 1])
            {
                return false;
            }
        }

        return items.Length == 0 || _y[items[^1]] + _frames.Down[items[^1]] <= height;
    }

    private Placement Place(int height)
    {
        height = Measure.Up(Math.Max(height, LeastHeight));
        for (int c = 0; c < _seps.Length; c++)
        {
            int extra = Measure.Down((height - _total[c]) / 2);
            for (int k = 0; k < _seps[c].Length; k++)
            {
                _y[_order.Items[c][k]] = _seps[c][k] + extra;
            }
        }

        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            for (int k = 0; k < _seps.Length; k++)
            {
                int c = sweep % 2 == 0 ? k : _seps.Length - 1 - k;
                Fit(c, height, sweep != 1, sweep != 0);
            }

            if (sweep == 3)
            {
                RowChooser.Choose(_order, _frames, _pull, _y);
            }
        }

        return Straighten(height);
    }

    private Placement Straighten(int height)
    {
        Aligner.Align(_order, _frames, _seps, _y, height);
        new Straightener(_order, _frames, _pull, _seps, _y, height).Run();
        int top = int.MaxValue, bottom = 0;
        for (int i = 0; i < _y.Length; i++)
        {
            top = Math.Min(top, _y[i] - _frames.Up[i]);
            bottom = Math.Max(bottom, _y[i] + _frames.Down[i]);
        }

        top = _y.Length == 0 ? 0 : Measure.Down(top);
        for (int i = 0; i < _y.Length; i++)
        {
            _y[i] -= top;
        }

        return new Placement { Order = _order, Frames = _frames, Y = _y, Height = bottom - top, Room = height, LeastHeight = LeastHeight };
    }

    private void Fit(int c, int height, bool byLeft, bool byRight)
    {
        int[] items = _order.Items[c], seps = _seps[c];
        int n = items.Length;
        Span<int> entry = n <= 256 ? stackalloc int[n + 1] : new int[n + 1];
        Span<int> count = n <= 256 ? stackalloc int[n] : new int[n];
        Span<int> at = n <= 256 ? stackalloc int[n] : new int[n];
        int blocks = 0, used = 0;
        for (int k = 0; k < n; k++)
        {
            entry[blocks] = used;
            used = Gather(items[k], seps[k], used, byLeft, byRight);
            count[blocks] = 1;
            at[blocks] = Median(entry[blocks], used);
            blocks++;
            while (blocks > 1 && at[blocks - 2] > at[blocks - 1])
            {
                Merge(entry[blocks - 2], entry[blocks - 1], used);
                count[blocks - 2] += count[blocks - 1];
                blocks--;
                at[blocks - 1] = Median(entry[blocks - 1], used);
            }
        }

        int highest = Measure.Down(height - _total[c]), i = 0;
        for (int b = 0; b < blocks; b++)
        {
            int z = Math.Clamp(at[b], 0, highest);
            for (int k = 0; k < count[b]; k++, i++)
            {
                _y[items[i]] = z + seps[i];
            }
        }
    }

    // Where an item's partners would have it, less its place in a tightly packed column; sorted.
    private int Gather(int item, int sep, int used, bool byLeft, bool byRight)
    {
        int from = used;
        for (int k = _pull.Start[item]; k < _pull.Start[item + 1]; k++)
        {
            if (_pull.ToRight[k] ? byRight : byLeft)
            {
                int target = _y[_pull.Other[k]] + _frames.Dy[_pull.Theirs[k]] - _frames.Dy[_pull.Mine[k]] - sep;
                Insert(from, used++, target, 32 * _pull.Weight[k]);
            }
        }

        if (used == from)
        {
            Insert(from, used++, _y[item] - sep, 1);
        }

        return used;
    }

    private void Insert(int from, int at, int value, int weight)
    {
        if (at >= _value.Length)
        {
            Array.Resize(ref _value, 2 * at);
            Array.Resize(ref _weight, 2 * at);
            Array.Resize(ref _value2, 2 * at);
            Array.Resize(ref _weight2, 2 * at);
        }

        while (at > from && _value[at - 1] > value)
        {
            (_value[at], _weight[at]) = (_value[at - 1], _weight[at - 1]);
            at--;
        }

        (_value[at], _weight[at]) = (value, weight);
    }

    private int Median(int from, int to)
    {
        long half = 0, sum = 0;
        for (int i = from; i < to; i++)
        {
            half += _weight[i];
        }

        for (int i = from; i < to; i++)
        {
            sum += 2 * _weight[i];
            if (sum >= half)
            {
                return _value[i];
            }
        }

        return _value[to - 1];
    }

    private void Merge(int from, int middle, int to)
    {
        int i = from, j = middle, k = from;
        while (i < middle || j < to)
        {
            int take = j >= to || (i < middle && _value[i] <= _value[j]) ? i++ : j++;
            (_value2[k], _weight2[k]) = (_value[take], _weight[take]);
            k++;
        }

        Array.Copy(_value2, from, _value, from, to - from);
        Array.Copy(_weight2, from, _weight, from, to - from);
    }
}
