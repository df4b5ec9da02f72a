using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// Lets as many wires as the order allows lie straight: the segments, long wires' first, are joined one by one to blocks that
/// move as one, as long as the distances in the columns and the height can still be kept. Whether they can is told by the
/// highest place of every block, a longest path that is mended where it changes; a block that would push itself cannot be.
/// Blocks as in U. Brandes, B. Köpf 2002; here with terminals that have ordinates of their own.
/// </summary>
internal sealed class Aligner
{
    private readonly ColumnOrder order;
    private readonly SegmentGraph graph;
    private readonly Frames frames;
    private readonly int[] ordinates, column, index;
    private readonly int[][] separations;
    private readonly int limit;

    /// <summary>Items of a block are a ring; an item's place is its block's and its own offset.</summary>
    private readonly int[] block, offset, next, size;
    private readonly int[] least;
    private readonly Queue<int> queue = new();
    private readonly bool[] queued;
    private readonly List<(int Block, int Was)> log = [];

    private Aligner(ColumnOrder order, Frames frames, int[][] separations, int[] y, int limit)
    {
        this.order = order;
        graph = order.Graph;
        this.frames = frames;
        this.separations = separations;
        ordinates = y;
        this.limit = limit;
        int n = y.Length;
        (column, index, block, offset, next, size, least, queued) =
            (new int[n], new int[n], new int[n], new int[n], new int[n], new int[n], new int[n], new bool[n]);
        for (int c = 0; c < order.Items.Length; c++)
        {
            for (int k = 0; k < order.Items[c].Length; k++)
            {
                int i = order.Items[c][k];
                (column[i], index[i], block[i], next[i], size[i], least[i]) = (c, k, i, i, 1, separations[c][k]);
            }
        }
    }

    /// <summary>Moves the items of a placed sheet, as little as that takes, to where most segments lie straight.</summary>
    public static void Align(ColumnOrder order, Frames frames, int[][] separations, int[] y, int limit)
    {
        var aligner = new Aligner(order, frames, separations, y, limit);
        foreach (int segment in aligner.ByWorth())
        {
            aligner.Join(segment);
        }

        aligner.Settle();
    }

    /// <summary>
    /// Segments between two dummy nodes first, since only they let a long wire pass without a jog; then those with more wires; then the
    /// nearly straight.
    /// </summary>
    private int[] ByWorth()
    {
        var segments = new List<(int Segment, int Worth, int Gap)>(graph.Segments);
        for (int p = 0; p < graph.Segments; p++)
        {
            var segment = graph.Segment[p];
            if (segment.Shape == SegmentShape.Across && graph.NodeItem[segment.A] != graph.NodeItem[segment.B])
            {
                int dummies = (graph.IsDummy(graph.NodeItem[segment.A]) ? 1 : 0) + (graph.IsDummy(graph.NodeItem[segment.B]) ? 1 : 0);
                int gap = Math.Abs(ordinates[graph.NodeItem[segment.A]] + frames.Dy[segment.A]
                    - ordinates[graph.NodeItem[segment.B]]
                    - frames.Dy[segment.B]);
                segments.Add((p, segment.Links * (dummies == 2 ? 4 : 2), gap));
            }
        }

        segments.Sort((a, b) =>
            a.Worth != b.Worth ? b.Worth.CompareTo(a.Worth) : a.Gap != b.Gap ? a.Gap.CompareTo(b.Gap) : a.Segment.CompareTo(b.Segment));
        return [.. segments.Select(p => p.Segment)];
    }

    private void Join(int p)
    {
        int na = graph.Segment[p].A, nb = graph.Segment[p].B, a = graph.NodeItem[na], b = graph.NodeItem[nb];
        if (this.block[a] == this.block[b])
        {
            return;
        }

        // The place of b's block, seen from that of a's.
        int step = offset[a] + frames.Dy[na] - offset[b] - frames.Dy[nb];
        if (size[this.block[a]] < size[this.block[b]])
        {
            (a, b, step) = (b, a, -step);
        }

        int keep = this.block[a], gone = this.block[b], kept = this.least[keep], lost = this.least[gone];
        int least = Math.Max(kept, lost - step);
        Merge(keep, gone, step);
        log.Clear();
        this.least[keep] = least;
        if (least + Reach(keep) > 0 || !Push(keep))
        {
            foreach (var (block, was) in Enumerable.Reverse(log))
            {
                this.least[block] = was;
            }

            Part(keep, gone, step);
            (this.least[keep], this.least[gone]) = (kept, lost);
        }
    }

    private void Merge(int keep, int gone, int step)
    {
        for (int i = gone, n = size[gone]; n > 0; n--, i = next[i])
        {
            block[i] = keep;
            offset[i] += step;
        }

        (next[keep], next[gone]) = (next[gone], next[keep]);
        size[keep] += size[gone];
    }

    private void Part(int keep, int gone, int step)
    {
        (next[keep], next[gone]) = (next[gone], next[keep]);
        size[keep] -= size[gone];
        for (int i = gone, n = size[gone]; n > 0; n--, i = next[i])
        {
            block[i] = gone;
            offset[i] -= step;
        }
    }

    /// <summary>How far a block's lowest item may still go; negative if there is room.</summary>
    private int Reach(int block)
    {
        int most = int.MinValue;
        for (int i = block, n = size[block]; n > 0; n--, i = next[i])
        {
            int[] items = order.Items[column[i]], tops = separations[column[i]];
            most = Math.Max(most, offset[i] + tops[^1] - tops[index[i]] + frames.Down[items[^1]] - limit);
        }

        return most;
    }

    /// <summary>Moves down what the block pushes. False if it comes back to the block itself or past the limit.</summary>
    private bool Push(int start)
    {
        bool holds = true;
        queue.Enqueue(start);
        queued[start] = true;
        while (queue.TryDequeue(out int block))
        {
            queued[block] = false;
            for (int i = block, n = size[block]; holds && n > 0; n--, i = next[i])
            {
                int[] items = order.Items[column[i]], tops = separations[column[i]];
                int k = index[i] + 1;
                if (k == items.Length)
                {
                    continue;
                }

                int below = items[k], other = this.block[below];
                int place = least[block] + offset[i] + tops[k] - tops[k - 1] - offset[below];
                if (place <= least[other])
                {
                    continue;
                }

                if (other == start || place + Reach(other) > 0)
                {
                    holds = false;
                    break;
                }

                log.Add((other, least[other]));
                least[other] = place;
                if (!queued[other])
                {
                    queued[other] = true;
                    queue.Enqueue(other);
                }
            }
        }

        return holds;
    }

    /// <summary>
    /// Every block as near as it can to where its items were: halfway between giving way downwards and giving way upwards.
    /// </summary>
    private void Settle()
    {
        int[] most = Most(), wanted = new int[ordinates.Length];
        var values = new List<int>();
        for (int b = 0; b < ordinates.Length; b++)
        {
            if (block[b] == b)
            {
                values.Clear();
                for (int i = b, n = size[b]; n > 0; n--, i = next[i])
                {
                    values.Add(ordinates[i] - offset[i]);
                }

                values.Sort();
                wanted[b] = Math.Clamp(values[values.Count / 2], least[b], most[b]);
            }
        }

        int[] down = (int[])wanted.Clone(), up = (int[])wanted.Clone();
        Relax(down, 1);
        Relax(up, -1);
        for (int i = 0; i < ordinates.Length; i++)
        {
            ordinates[i] = Model.Measure.Down((down[block[i]] + up[block[i]]) / 2) + offset[i];
        }
    }

    private int[] Most()
    {
        int[] most = new int[ordinates.Length];
        for (int b = 0; b < most.Length; b++)
        {
            most[b] = block[b] == b ? Model.Measure.Down(-Reach(b)) : 0;
        }

        Relax(most, -1);
        return most;
    }

    private void Relax(int[] at, int way)
    {
        for (int b = 0; b < at.Length; b++)
        {
            if (this.block[b] == b)
            {
                queue.Enqueue(b);
                queued[b] = true;
            }
        }

        while (queue.TryDequeue(out int block))
        {
            queued[block] = false;
            for (int i = block, n = size[block]; n > 0; n--, i = next[i])
            {
                int[] items = order.Items[column[i]], tops = separations[column[i]];
                int k = index[i] + way;
                if (k < 0 || k == items.Length)
                {
                    continue;
                }

                int beside = items[k], other = this.block[beside];
                int place = at[block] + offset[i] + tops[k] - tops[index[i]] - offset[beside];
                if (way > 0 ? place > at[other] : place < at[other])
                {
                    at[other] = place;
                    if (!queued[other])
                    {
                        queued[other] = true;
                        queue.Enqueue(other);
                    }
                }
            }
        }
    }
}
