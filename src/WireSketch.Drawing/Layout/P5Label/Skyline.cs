namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>How far things reach from a wall into a channel, by ordinate.</summary>
internal sealed class Skyline
{
    private const int Cell = 2;
    private int[] reach = [];
    private int offset;

    /// <summary>Clears to one reach everywhere between two ordinates.</summary>
    public void Reset(int upper, int lower, int reach)
    {
        offset = upper;
        int cells = ((lower - upper) / Cell) + 2;
        if (this.reach.Length < cells)
        {
            this.reach = new int[cells + 64];
        }

        this.reach.AsSpan(0, cells).Fill(reach);
        Cells = cells;
    }

    private int Cells { get; set; }

    /// <summary>The farthest reach between two ordinates, both included.</summary>
    public int Over(int upper, int lower)
    {
        int from = Math.Max(0, Above(upper)), to = Math.Min(Cells - 1, Below(lower)), most = int.MinValue;
        foreach (int r in reach.AsSpan(from, Math.Max(0, to - from + 1)))
        {
            most = Math.Max(most, r);
        }

        return most;
    }

    public void Raise(int upper, int lower, int reach)
    {
        int from = Math.Max(0, Above(upper)), to = Math.Min(Cells - 1, Below(lower));
        for (int i = from; i <= to; i++)
        {
            this.reach[i] = Math.Max(this.reach[i], reach);
        }
    }

    /// <summary>Ordinates are even, so the cells of a range are those whose ordinates lie in it.</summary>
    private int Above(int y) => (y - offset + Cell - 1) / Cell;

    private int Below(int y) => (y - offset) / Cell;
}
