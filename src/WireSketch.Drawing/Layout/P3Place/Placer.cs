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

    private readonly ColumnOrder order;
    private readonly SegmentGraph graph;
    private readonly Frames frames;
    private readonly Attraction attraction;
    private readonly int[][] separations;
    private readonly int[] total;
    private readonly int[] ordinates;
    private int[] value = new int[64], weight = new int[64], value2 = new int[64], weight2 = new int[64];

    private Placer(ColumnOrder order, Frames frames, Attraction attraction)
    {
        this.order = order;
        graph = order.Graph;
        this.frames = frames;
        this.attraction = attraction;
        ordinates = new int[graph.Items];
        separations = new int[order.Items.Length][];
        total = new int[order.Items.Length];
        for (int c = 0; c < separations.Length; c++)
        {
            int[] items = order.Items[c], s = separations[c] = new int[items.Length];
            for (int k = 0; k < s.Length; k++)
            {
                s[k] = k == 0 ? Measure.Up(frames.Up[items[0]]) : s[k - 1] + Measure.Up(frames.Down[items[k - 1]] + frames.Up[items[k]]);
            }

            total[c] = s.Length == 0 ? 0 : s[^1] + frames.Down[items[^1]];
            LeastHeight = Math.Max(LeastHeight, total[c]);
        }
    }

    private int LeastHeight { get; }

    /// <summary>
    /// Places a sheet in the given height, or in the least that it needs if that is more; rows and devices are set apart by
    /// <paramref name="spread"/> beyond the usual.
    /// </summary>
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
        new WarmStart(order, placer.frames, placer.attraction, placer.ordinates).From(other);
        for (int c = 0; c < placer.separations.Length; c++)
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
        int[] items = order.Items[c], tops = separations[c];
        for (int k = 0; k < items.Length; k++)
        {
            if (k == 0 ? ordinates[items[0]] < tops[0] : ordinates[items[k]] - ordinates[items[k - 1]] < tops[k] - tops[k - 1])
            {
                return false;
            }
        }

        return items.Length == 0 || ordinates[items[^1]] + frames.Down[items[^1]] <= height;
    }

    private Placement Place(int height)
    {
        height = Measure.Up(Math.Max(height, LeastHeight));
        for (int c = 0; c < separations.Length; c++)
        {
            int extra = Measure.Down((height - total[c]) / 2);
            for (int k = 0; k < separations[c].Length; k++)
            {
                ordinates[order.Items[c][k]] = separations[c][k] + extra;
            }
        }

        for (int sweep = 0; sweep < Sweeps; sweep++)
        {
            for (int k = 0; k < separations.Length; k++)
            {
                int c = sweep % 2 == 0 ? k : separations.Length - 1 - k;
                Fit(c, height, sweep != 1, sweep != 0);
            }

            if (sweep == 3)
            {
                new RowChooser(order, frames, attraction, ordinates).Choose();
            }
        }

        return Straighten(height);
    }

    private Placement Straighten(int height)
    {
        Aligner.Align(order, frames, separations, ordinates, height);
        new Straightener(order, frames, attraction, separations, ordinates, height).Run();
        int top = int.MaxValue, bottom = 0;
        for (int i = 0; i < ordinates.Length; i++)
        {
            top = Math.Min(top, ordinates[i] - frames.Up[i]);
            bottom = Math.Max(bottom, ordinates[i] + frames.Down[i]);
        }

        top = ordinates.Length == 0 ? 0 : Measure.Down(top);
        for (int i = 0; i < ordinates.Length; i++)
        {
            ordinates[i] -= top;
        }

        return new Placement
        {
            Order = order,
            Frames = frames,
            Y = ordinates,
            Height = bottom - top,
            Room = height,
            LeastHeight = LeastHeight
        };
    }

    private void Fit(int c, int height, bool byLeft, bool byRight)
    {
        int[] items = order.Items[c], tops = separations[c];
        int n = items.Length;
        Span<int> entry = n <= 256 ? stackalloc int[n + 1] : new int[n + 1];
        Span<int> count = n <= 256 ? stackalloc int[n] : new int[n];
        Span<int> at = n <= 256 ? stackalloc int[n] : new int[n];
        int blocks = 0, used = 0;
        for (int k = 0; k < n; k++)
        {
            entry[blocks] = used;
            used = Gather(items[k], tops[k], used, byLeft, byRight);
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

        int highest = Measure.Down(height - total[c]), i = 0;
        for (int b = 0; b < blocks; b++)
        {
            int z = Math.Clamp(at[b], 0, highest);
            for (int k = 0; k < count[b]; k++, i++)
            {
                ordinates[items[i]] = z + tops[i];
            }
        }
    }

    /// <summary>Where an item's partners would have it, less its place in a tightly packed column; sorted.</summary>
    private int Gather(int item, int sep, int used, bool byLeft, bool byRight)
    {
        int from = used;
        for (int k = attraction.Start[item]; k < attraction.Start[item + 1]; k++)
        {
            if (attraction.ToRight[k] ? byRight : byLeft)
            {
                int target = ordinates[attraction.Other[k]] + frames.Dy[attraction.Theirs[k]] - frames.Dy[attraction.Mine[k]] - sep;
                Insert(from, used++, target, 32 * attraction.Weight[k]);
            }
        }

        if (used == from)
        {
            Insert(from, used++, ordinates[item] - sep, 1);
        }

        return used;
    }

    private void Insert(int from, int at, int value, int weight)
    {
        if (at >= this.value.Length)
        {
            Array.Resize(ref this.value, 2 * at);
            Array.Resize(ref this.weight, 2 * at);
            Array.Resize(ref value2, 2 * at);
            Array.Resize(ref weight2, 2 * at);
        }

        while (at > from && this.value[at - 1] > value)
        {
            (this.value[at], this.weight[at]) = (this.value[at - 1], this.weight[at - 1]);
            at--;
        }

        (this.value[at], this.weight[at]) = (value, weight);
    }

    private int Median(int from, int to)
    {
        long half = 0, sum = 0;
        for (int i = from; i < to; i++)
        {
            half += weight[i];
        }

        for (int i = from; i < to; i++)
        {
            sum += 2 * weight[i];
            if (sum >= half)
            {
                return value[i];
            }
        }

        return value[to - 1];
    }

    private void Merge(int from, int middle, int to)
    {
        int i = from, j = middle, k = from;
        while (i < middle || j < to)
        {
            int take = j >= to || (i < middle && value[i] <= value[j]) ? i++ : j++;
            (value2[k], weight2[k]) = (value[take], weight[take]);
            k++;
        }

        Array.Copy(value2, from, value, from, to - from);
        Array.Copy(weight2, from, weight, from, to - from);
    }
}
