using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P3Place;

namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>Where a label lies on its wire.</summary>
internal static class LabelBox
{
    /// <summary>Distance of a slot's label from its terminal.</summary>
    public static int Start(SheetModel model, int slot) =>
        Measure.LabelStand + (model.IsTied(model.SlotPort[slot]) ? Measure.Tie : 0);

    /// <summary>Distance of a slot's terminal from the wall of the channel that its wire leaves to.</summary>
    public static int Inset(Placement placed, int slot, int[] columnWidth)
    {
        var w = placed.Graph;
        var model = w.Model;
        int b = model.SlotBody[slot], p = model.SlotPort[slot];
        int spare = columnWidth[w.Columns.Of[b]] - model.BodyWidth[b], left = spare / 2;
        bool leavesLeft = w.NodeOnRight[slot];
        if (model.PortSide[p] is PortSide.Left or PortSide.Right)
        {
            return leavesLeft ? left : spare - left;
        }

        int x = placed.Frames.EdgeX[p];
        return leavesLeft ? left + x : spare - left + model.BodyWidth[b] - x;
    }

    /// <summary>The box of a slot's label, on the middle of its wire's first stretch.</summary>
    public static GridRect At(LabeledSheet sheet, int slot)
    {
        var model = sheet.Graph.Model;
        var wire = model.Graph.Wires[model.SlotLabel[slot]];
        int start = Start(model, slot), x = sheet.TerminalX(slot), y = sheet.Placed.NodeY(slot);
        return new GridRect(
            sheet.Graph.NodeOnRight[slot] ? x - start - wire.LabelWidth : x + start,
            y - (wire.LabelHeight / 2),
            wire.LabelWidth,
            wire.LabelHeight);
    }
}
