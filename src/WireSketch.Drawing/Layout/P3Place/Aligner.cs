using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// Lets as many wires as the order allows lie straight: the pieces, long wires' first, are joined one by one to blocks that
/// move as one, as long as the distances in the columns and the height can still be kept. Whether they can is told by the
/// highest place of every block, a longest path that is mended where it changes; a block that would push itself cannot be.
/// Blocks as in U. Brandes, B. Köpf 2002; here with terminals that have ordinates of their own.
/// </summary>
internal sealed class Aligner
{
    private readonly ColumnOrder _order;
    private readonly SegmentGraph _w;
    private readonly Frames _frames;
    private readonly int[] _y, _column, _index;
    private readonly int[][] _seps;
    private readonly int _limit;

    // Items of a block are a ring; an item's place is its block's and its own offset.
    private readonly int[] _block, _offset, _next, _size;
    private readonly int[] _least;
    private readonly Queue<int> _queue = new();
    private readonly bool[] _queued;
    private readonly List<(int Block, int Was)> _log = [];

    private Aligner(ColumnOrder order, Frames frames, int[][] seps, int[] y, int limit)
    {
        (_order, _w, _frames, _seps, _y, _limit) = (order, order.Wiring, frames, seps, y, limit);
        int n = y.Length;
        (_column, _index, _block, _offset, _next, _size, _least, _queued) =
            (new int[n], new int[n], new int[n], new int[n], new int[n], new int[n], new int[n], new bool[n]);
        for (int c = 0; c < order.Items.Length; c++)
        {
            for (int k = 0; k < order.Items[c].Length; k++)
            {
                int i = order.Items[c][k];
                (_column[i], _index[i], _block[i], _next[i], _size[i], _least[i]) = (c, k, i, i, 1, seps[c][k]);
            }
        }
    }

    /// <summary>Moves the items of a placed sheet, as little as that takes, to where most pieces lie straight.</summary>
    public static void Align(ColumnOrder order, Frames frames, int[][] seps, int[] y, int limit)
    {
        var aligner = new Aligner(order, frames, seps, y, limit);
        foreach (int piece in aligner.ByWorth())
        {
            aligner.Join(piece);
        }

        aligner.Settle();
    }

    // Pieces between two lanes first, since only they let a long wire pass without a jog; then those with more wires; then the nearly straight.
    private int[] ByWorth()
    {
        var pieces = new List<(int Piece, int Worth, int Gap)>(_w.Pieces);
        for (int p = 0; p < _w.Pieces; p++)
        {
            var piece = _w.Piece[p];
            if (piece.Shape == SegmentShape.Across && _w.NodeItem[piece.A] != _w.NodeItem[piece.B])
            {
                int lanes = (_w.IsLane(_w.NodeItem[piece.A]) ? 1 : 0) + (_w.IsLane(_w.NodeItem[piece.B]) ? 1 : 0);
                int gap = Math.Abs(_y[_w.NodeItem[piece.A]] + _frames.Dy[piece.A] - _y[_w.NodeItem[piece.B]] - _frames.Dy[piece.B]);
                pieces.Add((p, piece.Links * (lanes == 2 ? 4 : 2), gap));
            }
        }

        pieces.Sort((a, b) => a.Worth != b.Worth ? b.Worth.CompareTo(a.Worth) : a.Gap != b.Gap ? a.Gap.CompareTo(b.Gap) : a.Piece.CompareTo(b.Piece));
        return [.. pieces.Select(p => p.Piece)];
    }

    private void Join(int p)
    {
        int na = _w.Piece[p].A, nb = _w.Piece[p].B, a = _w.NodeItem[na], b = _w.NodeItem[nb];
        if (_block[a] == _block[b])
        {
            return;
        }

        // The place of b's block, seen from that of a's.
        int step = _offset[a] + _frames.Dy[na] - _offset[b] - _frames.Dy[nb];
        if (_size[_block[a]] < _size[_block[b]])
        {
            (a, b, step) = (b, a, -step);
        }

        int keep = _block[a], gone = _block[b], kept = _least[keep], lost = _least[gone];
        int least = Math.Max(kept, lost - step);
        Merge(keep, gone, step);
        _log.Clear();
        _least[keep] = least;
        if (least + Reach(keep) > 0 || !Push(keep))
        {
            foreach (var (block, was) in Enumerable.Reverse(_log))
            {
                _least[block] = was;
            }

            Part(keep, gone, step);
            (_least[keep], _least[gone]) = (kept, lost);
        }
    }

    private void Merge(int keep, int gone, int step)
    {
        for (int i = gone, n = _size[gone]; n > 0; n--, i = _next[i])
        {
            _block[i] = keep;
            _offset[i] += step;
        }

        (_next[keep], _next[gone]) = (_next[gone], _next[keep]);
        _size[keep] += _size[gone];
    }

    private void Part(int keep, int gone, int step)
    {
        (_next[keep], _next[gone]) = (_next[gone], _next[keep]);
        _size[keep] -= _size[gone];
        for (int i = gone, n = _size[gone]; n > 0; n--, i = _next[i])
        {
            _block[i] = gone;
            _offset[i] -= step;
        }
    }

    // How far a block's lowest item may still go; negative if there is room.
    private int Reach(int block)
    {
        int most = int.MinValue;
        for (int i = block, n = _size[block]; n > 0; n--, i = _next[i])
        {
            int[] items = _order.Items[_column[i]], seps = _seps[_column[i]];
            most = Math.Max(most, _offset[i] + seps[^1] - seps[_index[i]] + _frames.Down[items[^1]] - _limit);
        }

        return most;
    }

    // Moves down what the block pushes. False if it comes back to the block itself or past the limit.
    private bool Push(int start)
    {
        bool holds = true;
        _queue.Enqueue(start);
        _queued[start] = true;
        while (_queue.TryDequeue(out int block))
        {
            _queued[block] = false;
            for (int i = block, n = _size[block]; holds && n > 0; n--, i = _next[i])
            {
                int[] items = _order.Items[_column[i]], seps = _seps[_column[i]];
                int k = _index[i] + 1;
                if (k == items.Length)
                {
                    continue;
                }

                int below = items[k], other = _block[below];
                int place = _least[block] + _offset[i] + seps[k] - seps[k - 1] - _offset[below];
                if (place <= _least[other])
                {
                    continue;
                }

                if (other == start || place + Reach(other) > 0)
                {
                    holds = false;
                    break;
                }

                _log.Add((other, _least[other]));
                _least[other] = place;
                if (!_queued[other])
                {
                    _queued[other] = true;
                    _queue.Enqueue(other);
                }
            }
        }

        return holds;
    }

    // Every block as near as it can to where its items were: halfway between giving way downwards and giving way upwards.
    private void Settle()
    {
        int[] most = Most(), wanted = new int[_y.Length];
        var values = new List<int>();
        for (int b = 0; b < _y.Length; b++)
        {
            if (_block[b] == b)
            {
                values.Clear();
                for (int i = b, n = _size[b]; n > 0; n--, i = _next[i])
                {
                    values.Add(_y[i] - _offset[i]);
                }

                values.Sort();
                wanted[b] = Math.Clamp(values[values.Count / 2], _least[b], most[b]);
            }
        }

        int[] down = (int[])wanted.Clone(), up = (int[])wanted.Clone();
        Relax(down, 1);
        Relax(up, -1);
        for (int i = 0; i < _y.Length; i++)
        {
            _y[i] = Model.Measure.Down((down[_block[i]] + up[_block[i]]) / 2) + _offset[i];
        }
    }

    private int[] Most()
    {
        int[] most = new int[_y.Length];
        for (int b = 0; b < most.Length; b++)
        {
            most[b] = _block[b] == b ? Model.Measure.Down(-Reach(b)) : 0;
        }

        Relax(most, -1);
        return most;
    }

    private void Relax(int[] at, int way)
    {
        for (int b = 0; b < at.Length; b++)
        {
            if (_block[b] == b)
            {
                _queue.Enqueue(b);
                _queued[b] = true;
            }
        }

        while (_queue.TryDequeue(out int block))
        {
            _queued[block] = false;
            for (int i = block, n = _size[block]; n > 0; n--, i = _next[i])
            {
                int[] items = _order.Items[_column[i]], seps = _seps[_column[i]];
                int k = _index[i] + way;
                if (k < 0 || k == items.Length)
                {
                    continue;
                }

                int beside = items[k], other = _block[beside];
                int place = at[block] + _offset[i] + seps[k] - seps[_index[i]] - _offset[beside];
                if (way > 0 ? place > at[other] : place < at[other])
                {
                    at[other] = place;
                    if (!_queued[other])
                    {
                        _queued[other] = true;
                        _queue.Enqueue(other);
                    }
                }
            }
        }
    }
}
