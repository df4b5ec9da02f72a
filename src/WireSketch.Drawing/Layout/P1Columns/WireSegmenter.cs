using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>Cuts the wires of a sheet into dummy nodes and segments, once it is known which column each body stands in.</summary>
internal sealed class WireSegmenter
{
    private readonly SheetModel model;
    private readonly ColumnPlan columns;
    private readonly Choices choices;
    private readonly Dictionary<(long Key, int Column), int> dummyOf = [];
    private readonly Dictionary<long, int> segmentOf = [];
    private readonly List<int> dummyColumn = [], dummyBundle = [], dummyHalf = [];
    private readonly List<long> dummyKey = [];
    private readonly List<WireSegment> segments = [];
    private readonly List<int> chain = [];
    private readonly int[] slotChannel;
    private readonly bool[] slotOnRight;

    private WireSegmenter(SheetModel model, ColumnPlan columns, Choices choices)
    {
        this.model = model;
        this.columns = columns;
        this.choices = choices;
        slotChannel = new int[model.Slots];
        slotOnRight = new bool[model.Slots];
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
        for (int s = 0; s < model.Slots; s++)
        {
            int b = model.SlotBody[s], p = model.SlotPort[s];
            bool leavesRight = model.PortSide[p] switch
            {
                PortSide.Left or PortSide.Right => choices.OnRight(model, p),
                _ => choices.Leaves[p] == Leaving.Right || (choices.Leaves[p] == Leaving.Towards && towards[p] > 0),
            };
            slotChannel[s] = columns.Of[b] + (leavesRight ? 1 : 0);
            slotOnRight[s] = !leavesRight;
        }
    }

    /// <summary>For each terminal above or below: do its wires mostly go right?</summary>
    private int[] Towards()
    {
        int[] towards = new int[model.PortSide.Length];
        for (int l = 0; l < model.Links; l++)
        {
            Count(model.LinkFrom[l], model.LinkTo[l]);
            Count(model.LinkTo[l], model.LinkFrom[l]);
        }

        return towards;

        void Count(int near, int far)
        {
            int p = model.SlotPort[near], ca = columns.Of[model.SlotBody[near]], cb = columns.Of[model.SlotBody[far]];
            towards[p] += cb > ca
                || (cb == ca
                    && (model.PortSide[model.SlotPort[far]] is PortSide.Top or PortSide.Bottom
                        || choices.OnRight(model, model.SlotPort[far])))
                ? 1
                : -1;
        }
    }

    private SegmentGraph Cut()
    {
        int[] chainStart = new int[model.Links + 1];
        bool[] reversed = new bool[model.Links];
        for (int l = 0; l < model.Links; l++)
        {
            chainStart[l] = chain.Count;
            reversed[l] = CutLink(l);
        }

        chainStart[^1] = chain.Count;
        int dummies = dummyColumn.Count, nodes = model.Slots + (2 * dummies), items = model.Bodies + dummies;
        int[] nodeItem = new int[nodes], nodeChannel = new int[nodes];
        bool[] nodeOnRight = new bool[nodes];
        model.SlotBody.CopyTo(nodeItem, 0);
        slotChannel.CopyTo(nodeChannel, 0);
        slotOnRight.CopyTo(nodeOnRight, 0);
        for (int k = 0; k < dummies; k++)
        {
            int n = model.Slots + (2 * k);
            nodeItem[n] = nodeItem[n + 1] = model.Bodies + k;
            (nodeChannel[n], nodeOnRight[n]) = (dummyColumn[k], true);
            (nodeChannel[n + 1], nodeOnRight[n + 1]) = (dummyColumn[k] + 1, false);
        }

        int segments = this.segments.Count;
        bool[] turns = new bool[items];
        var byNode = new Buckets(nodes);
        var byItem = new Buckets(2 * items);
        var byChannel = new Buckets(columns.Count + 1);
        for (int pass = 0; pass < 2; pass++)
        {
            for (int p = 0; p < segments; p++)
            {
                int a = this.segments[p].A, b = this.segments[p].B;
                int itemA = (2 * nodeItem[a]) + (nodeOnRight[a] ? 0 : 1), itemB = (2 * nodeItem[b]) + (nodeOnRight[b] ? 0 : 1);
                turns[nodeItem[a]] |= this.segments[p].Shape != SegmentShape.Across;
                turns[nodeItem[b]] |= this.segments[p].Shape != SegmentShape.Across;
                byChannel.Put(this.segments[p].Channel, p);
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

            byChannel.Turn();
            byNode.Turn();
            byItem.Turn();
        }

        return new SegmentGraph
        {
            Model = model,
            Columns = columns,
            Choices = choices,
            DummyColumn = [.. dummyColumn],
            DummyKey = [.. dummyKey],
            DummyBundle = [.. dummyBundle],
            DummyHalf = [.. dummyHalf],
            NodeItem = nodeItem,
            NodeChannel = nodeChannel,
            NodeOnRight = nodeOnRight,
            Segment = [.. this.segments],
            NodeStart = byNode.Start,
            NodeSegments = byNode.Content,
            ChannelStart = byChannel.Start,
            ChannelSegments = byChannel.Content,
            ItemStart = byItem.Start,
            ItemSegments = byItem.Content,
            ItemTurns = turns,
            ChainStart = chainStart,
            ChainSegments = [.. chain],
            ChainReversed = reversed,
        };
    }

    private bool CutLink(int link)
    {
        int wire = model.LinkWire[link], a = model.LinkFrom[link], b = model.LinkTo[link];
        if (a == b)
        {
            return false;
        }

        bool reversed = slotChannel[a] > slotChannel[b];
        if (reversed)
        {
            (a, b) = (b, a);
        }

        int half = Measure.HalfOf(model.Graph.Wires[wire].Weight);
        int net = choices.Alone[wire] ? model.PortCount + wire : model.WireHub[wire];
        int node = a;
        for (int c = slotChannel[a]; c < slotChannel[b]; c++)
        {
            int dummy = Dummy(net, wire, c, half);
            AddSegment(node, dummy, c, half, net);
            node = dummy + 1;
        }

        AddSegment(node, b, slotChannel[b], half, net);
        return reversed;
    }

    private int Dummy(int net, int wire, int column, int half)
    {
        int bundle = columns.IsWall[column] ? model.WireBundle[wire] : -1;
        long key = ((long)(bundle + 1) << 32) | (uint)net;
        if (!dummyOf.TryGetValue((key, column), out int dummy))
        {
            dummyOf.Add((key, column), dummy = dummyColumn.Count);
            dummyColumn.Add(column);
            dummyKey.Add(key);
            dummyBundle.Add(bundle);
            dummyHalf.Add(0);
        }

        dummyHalf[dummy] = Math.Max(dummyHalf[dummy], Math.Max(Measure.HalfLine, half));
        return model.Slots + (2 * dummy);
    }

    private bool OnRight(int node) => node < model.Slots ? slotOnRight[node] : (node - model.Slots) % 2 == 0;

    private void AddSegment(int x, int y, int channel, int half, int net)
    {
        bool rx = OnRight(x), ry = OnRight(y);
        int a = x, b = y;
        if (rx && !ry || (rx == ry && a > b))
        {
            (a, b) = (b, a);
        }

        long key = ((long)a << 32) | (uint)b;
        if (!segmentOf.TryGetValue(key, out int segment))
        {
            segmentOf.Add(key, segment = segments.Count);
            var shape = rx != ry ? SegmentShape.Across : rx ? SegmentShape.TurnRight : SegmentShape.TurnLeft;
            segments.Add(new WireSegment(a, b, net, shape, channel));
        }

        var known = segments[segment];
        segments[segment] = known with { Links = known.Links + 1, Half = Math.Max(known.Half, half) };
        chain.Add(segment);
    }
}
