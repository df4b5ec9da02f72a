using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;

namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>
/// Joins the segments of each channel to vertical segments and puts the vertical segments in the order that crosses least.
/// </summary>
internal sealed class Router
{
    private readonly Placement placed;
    private readonly SegmentGraph graph;
    private readonly int[] nodeY;
    private readonly int[] verticalOf;
    private readonly List<int> upper = [], lower = [], half = [];
    private readonly List<(int, int)> clashes = [];
    private int crossings;

    private Router(Placement placed)
    {
        this.placed = placed;
        graph = placed.Graph;
        verticalOf = new int[graph.Segments];
        nodeY = new int[graph.NodeItem.Length];
        for (int n = 0; n < nodeY.Length; n++)
        {
            nodeY[n] = placed.NodeY(n);
        }
    }

    public static RoutedSheet Route(Placement placed)
    {
        var router = new Router(placed);
        int[][] tracks = new int[placed.Graph.Columns.Count + 1][];
        for (int g = 0; g < tracks.Length; g++)
        {
            tracks[g] = router.RouteChannel(g);
        }

        return new RoutedSheet
        {
            Placed = placed,
            VerticalOf = router.verticalOf,
            Upper = [.. router.upper],
            Lower = [.. router.lower],
            Half = [.. router.half],
            Tracks = tracks,
            Crossings = router.crossings,
            Clashes = router.clashes,
        };
    }

    private int[] RouteChannel(int channel)
    {
        var segments = graph.In(channel);
        if (segments.Length == 0)
        {
            return [];
        }

        var verticals = Join(segments);
        var bent = new List<VerticalSegment>();
        foreach (var t in verticals)
        {
            foreach (int p in t.Segments)
            {
                verticalOf[p] = upper.Count;
            }

            t.Number = upper.Count;
            upper.Add(t.Upper);
            lower.Add(t.Lower);
            half.Add(t.Half);
            if (t.Upper != t.Lower)
            {
                bent.Add(t);
            }
        }

        foreach (var t in verticals)
        {
            if (t.Upper == t.Lower)
            {
                foreach (var other in bent)
                {
                    crossings += t.Links * other.Across(t.Upper);
                }
            }
        }

        bent.Sort((a, b) => a.StartRank != b.StartRank ? a.StartRank.CompareTo(b.StartRank) : a.Number.CompareTo(b.Number));
        var order = new TrackOrder(bent);
        int[] sorted = order.Sort();
        crossings += order.Crossings;
        clashes.AddRange(order.Clashes);
        return Array.ConvertAll(sorted, i => bent[i].Number);
    }

    private List<VerticalSegment> Join(ReadOnlySpan<int> segments)
    {
        var verticals = new List<VerticalSegment>();
        foreach (int seed in segments)
        {
            verticalOf[seed] = -1;
        }

        var open = new Stack<int>();
        foreach (int seed in segments)
        {
            if (verticalOf[seed] >= 0)
            {
                continue;
            }

            var vertical = new VerticalSegment();
            verticalOf[seed] = verticals.Count;
            open.Push(seed);
            while (open.Count > 0)
            {
                int p = open.Pop();
                vertical.Add(p, nodeY[graph.Segment[p].A], nodeY[graph.Segment[p].B], graph.Segment[p].Links, graph.Segment[p].Half);
                for (int end = 0; end < 2; end++)
                {
                    int node = end == 0 ? graph.Segment[p].A : graph.Segment[p].B, links = 0;
                    foreach (int q in graph.At(node))
                    {
                        links += graph.Segment[q].Links;
                        if (verticalOf[q] < 0)
                        {
                            verticalOf[q] = verticals.Count;
                            open.Push(q);
                        }
                    }

                    vertical.AddNode(node, nodeY[node], links, graph.NodeOnRight[node]);
                }
            }

            verticals.Add(vertical);
        }

        return verticals;
    }
}
