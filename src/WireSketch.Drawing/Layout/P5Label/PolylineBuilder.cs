using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>Strings the segments of a link together to a line of horizontal and vertical stretches.</summary>
internal sealed class PolylineBuilder(LabeledSheet sheet)
{
    private readonly List<GridPoint> points = [];

    /// <summary>
    /// The points of a link from its first terminal to its last, without repeated or in-line points; ordinates without the heading. Valid
    /// until the next call.
    /// </summary>
    public IReadOnlyList<GridPoint> Build(int link)
    {
        var w = sheet.Graph;
        var model = w.Model;
        points.Clear();
        int from = model.LinkFrom[link], to = model.LinkTo[link];
        bool reversed = w.ChainReversed[link];
        int start = reversed ? to : from, end = reversed ? from : to;
        Leave(start);
        int node = start;
        foreach (int p in w.Chain(link))
        {
            int next = w.Segment[p].A == node ? w.Segment[p].B : w.Segment[p].A;
            int vertical = sheet.Routed.VerticalOf[p];
            if (sheet.Routed.Upper[vertical] != sheet.Routed.Lower[vertical])
            {
                Add(sheet.VerticalX[vertical], sheet.Placed.NodeY(node));
                Add(sheet.VerticalX[vertical], sheet.Placed.NodeY(next));
            }

            // Through a dummy node to the other side of its column.
            node = next >= model.Slots ? model.Slots + ((next - model.Slots) ^ 1) : next;
        }

        Arrive(end);
        if (reversed)
        {
            points.Reverse();
        }

        return points;
    }

    private void Leave(int slot)
    {
        int x = sheet.TerminalX(slot), y = sheet.TerminalY(slot), row = sheet.Placed.NodeY(slot);
        Add(x, y);
        if (row != y)
        {
            x = TieX(slot, x);
            Add(x, y);
            Add(x, row);
        }
    }

    private void Arrive(int slot)
    {
        int x = sheet.TerminalX(slot), y = sheet.TerminalY(slot), row = sheet.Placed.NodeY(slot);
        if (row != y)
        {
            int tie = TieX(slot, x);
            Add(tie, row);
            Add(tie, y);
        }

        Add(x, y);
    }

    /// <summary>
    /// The rows of one terminal part a little outside the box; terminals above and below lead to their dummy nodes straight.
    /// </summary>
    private int TieX(int slot, int x) =>
        sheet.Graph.Model.PortSide[sheet.Graph.Model.SlotPort[slot]] is PortSide.Left or PortSide.Right
            ? x + (sheet.Graph.NodeOnRight[slot] ? -Measure.Tie : Measure.Tie)
            : x;

    private void Add(int x, int y)
    {
        var point = new GridPoint(x, y);
        if (points.Count > 0 && points[^1] == point)
        {
            return;
        }

        while (points.Count > 1 && ((points[^1].X == x && points[^2].X == x) || (points[^1].Y == y && points[^2].Y == y)))
        {
            points.RemoveAt(points.Count - 1);
            if (points[^1] == point)
            {
                return;
            }
        }

        points.Add(point);
    }
}
