using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>Cuts the wires of a sheet into lanes and pieces, once it is known which column each body stands in.</summary>
internal sealed class WireSegmenter
{
    private readonly SheetModel _model;
    private readonly ColumnPlan _columns;
    private readonly Choices _choices;
    private readonly Dictionary<(long Key, int Column), int> _laneOf = [];
    private readonly Dictionary<long, int> _pieceOf = [];
    private readonly List<int> _laneColumn = [], _laneBundle = [], _laneHalf = [];
    private readonly List<long> _laneKey = [];
    private readonly List<WireSegment> _pieces = [];
    private readonly List<int> _chain = [];
    private readonly int[] _slotGutter;
    private readonly bool[] _slotOnRight;

    private WireSegmenter(SheetModel model, ColumnPlan columns, Choices choices)
    {
        (_model, _columns, _choices) = (model, columns, choices);
        _slotGutter = new int[model.Slots];
        _slotOnRight = new bool[model.Slots];
    }

    public static SegmentGraph Cut(SheetModel model, Choices choices)
    {
        var cutter = new WireSegmenter(model, ColumnPlan.From(model, choices.Sub), choices);
        cutter.PlaceSlots();
        return cutter.Cut();
    }

    private void PlaceSlots()
    {
        var towards = Towards();
        for (int s = 0; s < _model.Slots; s++)
        {
            int b = _model.SlotBody[s], p = _model.SlotPort[s];
            bool leavesRight = _model.PortSide[p] switch
            {
                PortSide.Left or PortSide.Right => _choices.OnRight(_model, p),
                _ => _choices.Leaves[p] == Leaving.Right || (_choices.Leaves[p] == Leaving.Towards && towards[p] > 0),
            };
            _slotGutter[s] = _columns.Of[b] + (leavesRight ? 1 : 0);
            _slotOnRight[s] = !leavesRight;
        }
    }

    // For each terminal above or below: do its wires mostly go right?
    private int[] Towards()
    {
        int[] towards = new int[_model.PortSide.Length];
        for (int l = 0; l < _model.Links; l++)
        {
            Count(_model.LinkFrom[l], _model.LinkTo[l]);
            Count(_model.LinkTo[l], _model.LinkFrom[l]);
        }

        return towards;

        void Count(int near, int far)
        {
            int p = _model.SlotPort[near], ca = _columns.Of[_model.SlotBody[near]], cb = _columns.Of[_model.SlotBody[far]];
            towards[p] += cb > ca || (cb == ca && (_model.PortSide[_model.SlotPort[far]] is PortSide.Top or PortSide.Bottom || _choices.OnRight(_model, _model.SlotPort[far]))) ? 1 : -1;
        }
    }

    private SegmentGraph Cut()
    {
        int[] chainStart = new int[_model.Links + 1];
        bool[] reversed = new bool[_model.Links];
        for (int l = 0; l < _model.Links; l++)
        {
            chainStart[l] = _chain.Count;
            reversed[l] = CutLink(l);
        }

        chainStart[^1] = _chain.Count;
        int lanes = _laneColumn.Count, nodes = _model.Slots + (2 * lanes), items = _model.Bodies + lanes;
        int[] nodeItem = new int[nodes], nodeGutter = new int[nodes];
        bool[] nodeOnRight = new bool[nodes];
        _model.SlotBody.CopyTo(nodeItem, 0);
        _slotGutter.CopyTo(nodeGutter, 0);
        _slotOnRight.CopyTo(nodeOnRight, 0);
        for (int k = 0; k < lanes; k++)
        {
            int n = _model.Slots + (2 * k);
            nodeItem[n] = nodeItem[n + 1] = _model.Bodies + k;
            (nodeGutter[n], nodeOnRight[n]) = (_laneColumn[k], true);
            (nodeGutter[n + 1], nodeOnRight[n + 1]) = (_laneColumn[k] + 1, false);
        }

        int pieces = _pieces.Count;
        bool[] turns = new bool[items];
        var byNode = new Buckets(nodes);
        var byItem = new Buckets(2 * items);
        var byGutter = new Buckets(_columns.Count + 1);
        for (int pass = 0; pass < 2; pass++)
        {
            for (int p = 0; p < pieces; p++)
            {
                int a = _pieces[p].A, b = _pieces[p].B;
                int itemA = (2 * nodeItem[a]) + (nodeOnRight[a] ? 0 : 1), itemB = (2 * nodeItem[b]) + (nodeOnRight[b] ? 0 : 1);
                turns[nodeItem[a]] |= _pieces[p].Shape != SegmentShape.Across;
                turns[nodeItem[b]] |= _pieces[p].Shape != SegmentShape.Across;
                byGutter.Put(_pieces[p].Gutter, p);
                byNode.Put(a, p);
                byItem.Put(itemA, p);
                if (a != b)
                {
                    byNode.Put(b, p);
                }

                if (itemA != itemB)
                {
                    byItem.Put(itemB, p);
                }
            }

            byGutter.Turn();
            byNode.Turn();
            byItem.Turn();
        }

        return new SegmentGraph
        {
            Model = _model,
            Columns = _columns,
            Choices = _choices,
            LaneColumn = [.. _laneColumn],
            LaneKey = [.. _laneKey],
            LaneBundle = [.. _laneBundle],
            LaneHalf = [.. _laneHalf],
            NodeItem = nodeItem,
            NodeGutter = nodeGutter,
            NodeOnRight = nodeOnRight,
            Piece = [.. _pieces],
            NodeStart = byNode.Start,
            NodePieces = byNode.Content,
            GutterStart = byGutter.Start,
            GutterPieces = byGutter.Content,
            ItemStart = byItem.Start,
            ItemPieces = byItem.Content,
            ItemTurns = turns,
            ChainStart = chainStart,
            ChainPieces = [.. _chain],
            ChainReversed = reversed,
        };
    }

    private bool CutLink(int link)
    {
        int wire = _model.LinkWire[link], a = _model.LinkFrom[link], b = _model.LinkTo[link];
        if (a == b)
        {
            return false;
        }

        bool reversed = _slotGutter[a] > _slotGutter[b];
        if (reversed)
        {
            (a, b) = (b, a);
        }

        int half = Measure.HalfOf(_model.Graph.Wires[wire].Weight);
        int net = _choices.Alone[wire] ? _model.PortCount + wire : _model.WireHub[wire];
        int node = a;
        for (int c = _slotGutter[a]; c < _slotGutter[b]; c++)
        {
            int lane = Lane(net, wire, c, half);
            AddPiece(node, lane, c, half, net);
            node = lane + 1;
        }

        AddPiece(node, b, _slotGutter[b], half, net);
        return reversed;
    }

    private int Lane(int net, int wire, int column, int half)
    {
        int bundle = _columns.IsWall[column] ? _model.WireBundle[wire] : -1;
        long key = ((long)(bundle + 1) << 32) | (uint)net;
        if (!_laneOf.TryGetValue((key, column), out int lane))
        {
            _laneOf.Add((key, column), lane = _laneColumn.Count);
            _laneColumn.Add(column);
            _laneKey.Add(key);
            _laneBundle.Add(bundle);
            _laneHalf.Add(0);
        }

        _laneHalf[lane] = Math.Max(_laneHalf[lane], Math.Max(Measure.HalfLane, half));
        return _model.Slots + (2 * lane);
    }

    private bool OnRight(int node) => node < _model.Slots ? _slotOnRight[node] : (node - _model.Slots) % 2 == 0;

    private void AddPiece(int x, int y, int gutter, int half, int net)
    {
        bool rx = OnRight(x), ry = OnRight(y);
        int a = x, b = y;
        if (rx && !ry || (rx == ry && a > b))
        {
            (a, b) = (b, a);
        }

        long key = ((long)a << 32) | (uint)b;
        if (!_pieceOf.TryGetValue(key, out int piece))
        {
            _pieceOf.Add(key, piece = _pieces.Count);
            _pieces.Add(new WireSegment(a, b, net, 0, rx != ry ? SegmentShape.Across : rx ? SegmentShape.TurnRight : SegmentShape.TurnLeft, gutter, 0));
        }

        var known = _pieces[piece];
        _pieces[piece] = known with { Links = known.Links + 1, Half = Math.Max(known.Half, half) };
        _chain.Add(piece);
    }
}
