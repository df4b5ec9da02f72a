namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>The segments of one channel that hang together: one vertical stretch with arms to both walls.</summary>
internal sealed class VerticalSegment
{
    public List<int> Segments { get; } = [];
    public List<(int Upper, int Lower, int Links)> Spans { get; } = [];
    public List<(int Node, int Y, int Links)> Left { get; } = [];
    public List<(int Node, int Y, int Links)> Right { get; } = [];
    public int Number { get; set; }
    public int Upper { get; private set; } = int.MaxValue;
    public int Lower { get; private set; } = int.MinValue;
    public int Links { get; private set; }
    public int Half { get; private set; }

    /// <summary>Where the vertical segment stands in the order to start from: by the mean height of its left arms.</summary>
    public int StartRank
    {
        get
        {
            long sum = 0;
            foreach (var (_, y, _) in Left)
            {
                sum += y;
            }

            return Left.Count == 0 ? int.MaxValue : (int)(sum / Left.Count);
        }
    }

    public void Add(int segment, int y1, int y2, int links, int half)
    {
        Segments.Add(segment);
        Spans.Add((Math.Min(y1, y2), Math.Max(y1, y2), links));
        Upper = Math.Min(Upper, Math.Min(y1, y2));
        Lower = Math.Max(Lower, Math.Max(y1, y2));
        Links += links;
        Half = Math.Max(Half, half);
    }

    public void AddNode(int node, int y, int links, bool onRight)
    {
        var arms = onRight ? Right : Left;
        foreach (var (known, _, _) in arms)
        {
            if (known == node)
            {
                return;
            }
        }

        arms.Add((node, y, links));
    }

    /// <summary>Links whose vertical stretch passes the ordinate.</summary>
    public int Across(int y)
    {
        int sum = 0;
        if (y > Upper && y < Lower)
        {
            foreach (var (upper, lower, links) in Spans)
            {
                sum += upper < y && y < lower ? links : 0;
            }
        }

        return sum;
    }
}
