using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;

namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>Joins the pieces of each gutter to trunks and puts the trunks in the order that crosses least.</summary>
internal sealed class Router
{
    private readonly Placement _placed;
    private readonly SegmentGraph _w;
    private readonly int[] _nodeY;
    private readonly int[] _trunkOf;
    private readonly List<int> _upper = [], _lower = [], _half = [];
    private readonly List<(int, int)> _clashes = [];
    private int _crossings;

    private Router(Placement placed)
    {
        _placed = placed;
        _w = placed.Wiring;
        _trunkOf = new int[_w.Pieces];
        _nodeY = new int[_w.NodeItem.Length];
        for (int n = 0; n < _nodeY.Length; n++)
        {
            _nodeY[n] = placed.NodeY(n);
        }
    }

    public static RoutedSheet Route(Placement placed)
    {
        var router = new Router(placed);
        int[][] tracks = new int[placed.Wiring.Columns.Count + 1][];
        for (int g = 0; g < tracks.Length; g++)
        {
            tracks[g] = router.RouteGutter(g);
        }

        return new RoutedSheet
        {
            Placed = placed,
            TrunkOf = router._trunkOf,
            Upper = [.. router._upper],
            Lower = [.. router._lower],
            Half = [.. router._half],
            Tracks = tracks,
            Crossings = router._crossings,
            Clashes = router._clashes,
        };
    }

    private int[] RouteGutter(int gutter)
    {
        var pieces = _w.In(gutter);
        if (pieces.Length == 0)
        {
            return [];
        }

        var trunks = Join(pieces);
        var bent = new List<VerticalSegment>();
        foreach (var t in trunks)
        {
            foreach (int p in t.Pieces)
            {
                _trunkOf[p] = _upper.Count;
            }

            t.Number = _upper.Count;
            _upper.Add(t.Upper);
            _lower.Add(t.Lower);
            _half.Add(t.Half);
            if (t.Upper != t.Lower)
            {
                bent.Add(t);
            }
        }

        foreach (var t in trunks)
        {
            if (t.Upper == t.Lower)
            {
                foreach (var other in bent)
                {
                    _crossings += t.Links * other.Across(t.Upper);
                }
            }
        }

        bent.Sort((a, b) => a.StartRank != b.StartRank ? a.StartRank.CompareTo(b.StartRank) : a.Number.CompareTo(b.Number));
        var order = new TrackOrder(bent);
        int[] sorted = order.Sort();
        _crossings += order.Crossings;
        _clashes.AddRange(order.Clashes);
        return Array.ConvertAll(sorted, i => bent[i].Number);
    }

    private List<VerticalSegment> Join(ReadOnlySpan<int> pieces)
    {
        var trunks = new List<VerticalSegment>();
        foreach (int seed in pieces)
        {
            _trunkOf[seed] = -1;
        }

        var open = new Stack<int>();
        foreach (int seed in pieces)
        {
            if (_trunkOf[seed] >= 0)
            {
                continue;
            }

            var trunk = new VerticalSegment();
            _trunkOf[seed] = trunks.Count;
            open.Push(seed);
            while (open.Count > 0)
            {
                int p = open.Pop();
                trunk.Add(p, _nodeY[_w.Piece[p].A], _nodeY[_w.Piece[p].B], _w.Piece[p].Links, _w.Piece[p].Half);
                for (int end = 0; end < 2; end++)
                {
                    int node = end == 0 ? _w.Piece[p].A : _w.Piece[p].B, links = 0;
                    foreach (int q in _w.At(node))
                    {
                        links += _w.Piece[q].Links;
                        if (_trunkOf[q] < 0)
                        {
                            _trunkOf[q] = trunks.Count;
                            open.Push(q);
                        }
                    }

                    trunk.AddNode(node, _nodeY[node], links, _w.NodeOnRight[node]);
                }
            }

            trunks.Add(trunk);
        }

        return trunks;
    }
}
