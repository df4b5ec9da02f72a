using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;
using WireSketch.Drawing.Layout.P4Route;

namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>
/// Puts each label beside its terminal, which is a place nothing else can take, and then makes each channel as wide as its
/// labels and tracks need: a track keeps clear only of the labels whose rows it passes.
/// </summary>
internal sealed class Labeler
{
    private readonly RoutedSheet routed;
    private readonly Placement placed;
    private readonly SegmentGraph graph;
    private readonly SheetModel model;
    private readonly int[] columnWidth, verticalX, fromLeft, fromRight;
    private readonly int[] mostLeft, mostRight;
    private readonly Skyline skyline = new();
    private readonly List<(int Y, int Half, int Reach)>[] left, right;

    private Labeler(RoutedSheet routed)
    {
        this.routed = routed;
        placed = routed.Placed;
        graph = routed.Graph;
        model = graph.Model;
        columnWidth = ColumnWidths();
        verticalX = new int[routed.Upper.Length];
        fromLeft = new int[verticalX.Length];
        fromRight = new int[verticalX.Length];
        int channels = graph.Columns.Count + 1;
        mostLeft = new int[channels];
        mostRight = new int[channels];
        left = new List<(int, int, int)>[channels];
        right = new List<(int, int, int)>[channels];
        for (int g = 0; g < channels; g++)
        {
            left[g] = [];
            right[g] = [];
        }

        GatherLabels();
    }

    /// <summary>Labels a sheet; where it comes out narrower than <paramref name="least"/> its channels share what is missing.</summary>
    public static LabeledSheet Label(RoutedSheet routed, int least)
    {
        var labeler = new Labeler(routed);
        return labeler.Label(least);
    }

    private LabeledSheet Label(int least)
    {
        int channels = graph.Columns.Count + 1, sum = 2 * Measure.Margin;
        int[] width = new int[channels];
        for (int g = 0; g < channels; g++)
        {
            width[g] = Needed(g);
            sum += width[g] + (g < columnWidth.Length ? columnWidth[g] : 0);
        }

        if (sum < least)
        {
            Spread(width, least - sum);
        }

        for (int g = 0; g < channels; g++)
        {
            ShareSlack(g, width[g]);
        }

        var (zoneLeft, zoneRight) = Assemble(width, out int[] columnX, out int[] channelX, out int right);
        for (int g = 0; g < channels; g++)
        {
            foreach (int t in routed.Tracks[g])
            {
                verticalX[t] += channelX[g];
            }
        }

        return new LabeledSheet
        {
            Routed = routed,
            ColumnX = columnX,
            ColumnWidth = columnWidth,
            ChannelX = channelX,
            ChannelWidth = width,
            VerticalX = verticalX,
            ZoneLeft = zoneLeft,
            ZoneRight = zoneRight,
            Width = right,
        };
    }

    /// <summary>The outermost channels get half of what the inner ones get.</summary>
    private static void Spread(int[] width, int missing)
    {
        int shares = Math.Max(1, (2 * width.Length) - 2), given = 0;
        for (int g = 0; g < width.Length; g++)
        {
            int share = missing * (g == 0 || g == width.Length - 1 ? 1 : 2) / shares;
            width[g] += share;
            given += share;
        }

        width[^1] += Math.Max(0, missing - given);
    }

    private int[] ColumnWidths()
    {
        int[] width = new int[graph.Columns.Count];
        for (int c = 0; c < width.Length; c++)
        {
            width[c] = graph.Columns.IsWall[c] ? Measure.WallWidth : 20;
        }

        for (int b = 0; b < model.Bodies; b++)
        {
            width[graph.Columns.Of[b]] = Math.Max(width[graph.Columns.Of[b]], model.BodyWidth[b]);
        }

        return width;
    }

    private void GatherLabels()
    {
        for (int s = 0; s < model.Slots; s++)
        {
            if (model.SlotLabel[s] < 0)
            {
                continue;
            }

            var wire = model.Graph.Wires[model.SlotLabel[s]];
            int reach = LabelBox.Start(model, s) + wire.LabelWidth + 2 - LabelBox.Inset(placed, s, columnWidth);
            int g = graph.NodeChannel[s];
            var row = (placed.NodeY(s), Measure.HalfLabel(wire.LabelHeight), reach);
            if (graph.NodeOnRight[s])
            {
                right[g].Add(row);
                mostRight[g] = Math.Max(mostRight[g], reach);
            }
            else
            {
                left[g].Add(row);
                mostLeft[g] = Math.Max(mostLeft[g], reach);
            }
        }
    }

    private void Begin(int reach) => skyline.Reset(-64, placed.Height + 64, reach);

    private void RaiseLabels(List<(int Y, int Half, int Reach)> labels, int less)
    {
        foreach (var (y, half, reach) in labels)
        {
            skyline.Raise(y - half, y + half, reach - less);
        }
    }

    private int Needed(int g)
    {
        int[] tracks = routed.Tracks[g];
        Begin(Measure.WallClear - Measure.HalfTrack);
        RaiseLabels(left[g], 0);
        foreach (int t in tracks)
        {
            fromLeft[t] = skyline.Over(routed.Upper[t], routed.Lower[t]) + routed.Half[t];
            skyline.Raise(routed.Upper[t], routed.Lower[t], fromLeft[t] + routed.Half[t]);
        }

        Begin(Measure.WallClear - Measure.HalfTrack);
        RaiseLabels(right[g], 0);
        int width = Measure.LeastChannel;
        for (int i = tracks.Length - 1; i >= 0; i--)
        {
            int t = tracks[i];
            fromRight[t] = skyline.Over(routed.Upper[t], routed.Lower[t]) + routed.Half[t];
            skyline.Raise(routed.Upper[t], routed.Lower[t], fromRight[t] + routed.Half[t]);
            width = Math.Max(width, fromLeft[t] + fromRight[t]);
        }

        // Labels that face each other across the channel.
        if (left[g].Count > 0 && right[g].Count > 0)
        {
            Begin(0);
            RaiseLabels(left[g], 0);
            foreach (var (y, half, reach) in right[g])
            {
                width = Math.Max(width, skyline.Over(y - half, y + half) + reach + 2);
            }
        }

        width = Math.Max(width, Math.Max(mostLeft[g], mostRight[g]) + 4);
        return IsZoneEdge(g) ? Math.Max(width, mostLeft[g] + mostRight[g] + 8) : width;
    }

    private bool IsZoneEdge(int g) => g > 0 && g < graph.Columns.Count && graph.Columns.Zone[g - 1] != graph.Columns.Zone[g];

    /// <summary>Each track in the middle of its range, the order kept.</summary>
    private void ShareSlack(int g, int width)
    {
        Begin(int.MinValue / 2);
        foreach (int t in routed.Tracks[g])
        {
            int middle = (fromLeft[t] + width - fromRight[t]) / 2;
            int x = Math.Max(middle, Math.Max(fromLeft[t], skyline.Over(routed.Upper[t], routed.Lower[t]) + routed.Half[t]));
            verticalX[t] = Math.Min(x, width - fromRight[t]);
            skyline.Raise(routed.Upper[t], routed.Lower[t], verticalX[t] + routed.Half[t]);
        }
    }

    private (int[] Left, int[] Right) Assemble(int[] width, out int[] columnX, out int[] channelX, out int right)
    {
        int zones = model.Zones, columns = columnWidth.Length;
        int[] zoneLeft = new int[zones], zoneRight = new int[zones];
        columnX = new int[columns];
        channelX = new int[columns + 1];
        int x = Measure.Margin;
        for (int g = 0; g <= columns; g++)
        {
            if (IsZoneEdge(g) && !graph.Columns.IsWall[g - 1])
            {
                OpenZone(graph.Columns.Zone[g], x + ((mostLeft[g] + width[g] - mostRight[g]) / 2), zoneLeft, zoneRight, ref x);
            }

            channelX[g] = x;
            x += width[g];
            if (g == columns)
            {
                break;
            }

            columnX[g] = x;
            if (graph.Columns.IsWall[g])
            {
                int widen = Math.Max(0, zoneLeft[graph.Columns.Zone[g]] + Least(graph.Columns.Zone[g]) - x);
                x += widen;
                columnX[g] = x;
                zoneRight[graph.Columns.Zone[g]] = x;
                zoneLeft[graph.Columns.Zone[g] + 1] = x + columnWidth[g];
                width[g] += widen;
            }

            x += columnWidth[g];
        }

        right = x + Measure.Margin;
        if (zones > 0)
        {
            right = Math.Max(right, zoneLeft[zones - 1] + Least(zones - 1));
            zoneRight[zones - 1] = right;
        }

        return (zoneLeft, zoneRight);
    }

    private int Least(int zone) => model.Graph.Zones[zone].HeadingWidth + Measure.Margin;

    private void OpenZone(int zone, int edge, int[] zoneLeft, int[] zoneRight, ref int x)
    {
        int widen = Math.Max(0, zoneLeft[zone - 1] + Least(zone - 1) - edge);
        x += widen;
        zoneLeft[zone] = zoneRight[zone - 1] = edge + widen;
    }
}
