using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;
using WireSketch.Drawing.Layout.P4Route;

namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>A routed sheet with abscissas: channels as wide as their labels and tracks need.</summary>
internal sealed class LabeledSheet
{
    public required RoutedSheet Routed { get; init; }

    /// <summary>Left edge and width of each column and each channel.</summary>
    public required int[] ColumnX { get; init; }
    public required int[] ColumnWidth { get; init; }
    public required int[] ChannelX { get; init; }
    public required int[] ChannelWidth { get; init; }

    /// <summary>Abscissa of each vertical segment.</summary>
    public required int[] VerticalX { get; init; }

    /// <summary>Left and right edge of each zone.</summary>
    public required int[] ZoneLeft { get; init; }
    public required int[] ZoneRight { get; init; }

    public required int Width { get; init; }

    public Placement Placed => Routed.Placed;

    public SegmentGraph Graph => Routed.Graph;

    /// <summary>Height of the whole sheet with heading and margin.</summary>
    public int Height => Placed.Height + Measure.Heading + Measure.Margin;

    /// <summary>Left edge of a body's box.</summary>
    public int BodyX(int body)
    {
        int c = Graph.Columns.Of[body];
        return ColumnX[c] + ((ColumnWidth[c] - Graph.Model.BodyWidth[body]) / 2);
    }

    /// <summary>Where a slot's terminal is across the sheet.</summary>
    public int TerminalX(int slot)
    {
        var model = Graph.Model;
        int b = model.SlotBody[slot], p = model.SlotPort[slot];
        return BodyX(b) + model.PortSide[p] switch
        {
            PortSide.Left or PortSide.Right => Graph.NodeOnRight[slot] ? 0 : model.BodyWidth[b],
            _ => Placed.Frames.EdgeX[p],
        };
    }

    /// <summary>Where a slot's terminal is down the sheet, before the heading is added.</summary>
    public int TerminalY(int slot)
    {
        var model = Graph.Model;
        int b = model.SlotBody[slot], p = model.SlotPort[slot];
        return Placed.Y[b] + model.PortSide[p] switch
        {
            PortSide.Top => Placed.Frames.Top[b],
            PortSide.Bottom => Placed.Frames.Bottom[b],
            _ => Placed.Frames.Dy[model.PortSlot[p]],
        };
    }
}
