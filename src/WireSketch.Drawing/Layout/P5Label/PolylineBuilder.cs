using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>Strings the pieces of a link together to a line of horizontal and vertical stretches.</summary>
internal sealed class PolylineBuilder(LabeledSheet sheet)
{
    private readonly List<GridPoint> _points = [];

    /// <summary>The points of a link from its first terminal to its last, without repeated or in-line points; ordinates without the heading. Valid until the next call.</summary>
    public IReadOnlyList<GridPoint> Build(int link)
    {
        var w = sheet.Wiring;
        var model = w.Model;
        _points.Clear();
        int from = model.LinkFrom[link], to = model.LinkTo[link];
        bool reversed = w.ChainReversed[link];
        int start = reversed ? to : from, end = reversed ? from : to;
        Leave(start);
        int node = start;
        foreach (int p in w.Chain(link))
        {
            int next = w.Piece[p].A == node ? w.Piece[p].B : w.Piece[p].A;
            int trunk = sheet.Routed.TrunkOf[p];
            if (sheet.Routed.Upper[trunk] != sheet.Routed.Lower[trunk])
            {
                Add(sheet.TrunkX[trunk], sheet.Placed.NodeY(node));
                Add(sheet.TrunkX[trunk], sheet.Placed.NodeY(next));
            }

            // Through a lane to the other side of its column.
            node = next >= model.Slots ? model.Slots + ((next - model.Slots) ^ 1) : next;
        }

        Arrive(end);
        if (reversed)
        {
            _points.Reverse();
        }

        return _points;
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

    // The rows of one terminal part a little outside the box; terminals above and below lead to their lanes straight.
    private int TieX(int slot, int x) =>
        sheet.Wiring.Model.PortSide[sheet.Wiring.Model.SlotPort[slot]] is PortSide.Left or PortSide.Right
            ? x + (sheet.Wiring.NodeOnRight[slot] ? -Measure.Tie : Measure.Tie)
            : x;

    private void Add(int x, int y)
    {
        var point = new GridPoint(x, y);
        if (_points.Count > 0 && _points[^1] == point)
        {
            return;
        }

        while (_points.Count > 1 && ((_points[^1].X == x && _points[^2].X == x) || (_points[^1].Y == y && _points[^2].Y == y)))
        {
            _points.RemoveAt(_points.Count - 1);
            if (_points[^1] == point)
            {
                return;
            }
        }

        _points.Add(point);
    }
}
