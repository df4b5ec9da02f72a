using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;
using WireSketch.Drawing.Layout.P4Route;

namespace WireSketch.Drawing.Layout.P5Label;

/// <summary>
/// Puts each label beside its terminal, which is a place nothing else can take, and then makes each gutter as wide as its
/// labels and tracks need: a track keeps clear only of the labels whose rows it passes.
/// </summary>
internal sealed class Labeler
{
    private readonly RoutedSheet _routed;
    private readonly Placement _placed;
    private readonly SegmentGraph _w;
    private readonly SheetModel _model;
    private readonly int[] _columnWidth, _trunkX, _fromLeft, _fromRight;
    private readonly int[] _mostLeft, _mostRight;
    private readonly Skyline _sky = new();
    private readonly List<(int Y, int Half, int Reach)>[] _left, _right;

    private Labeler(RoutedSheet routed)
    {
        _routed = routed;
        _placed = routed.Placed;
        _w = routed.Wiring;
        _model = _w.Model;
        _columnWidth = ColumnWidths();
        _trunkX = new int[routed.Upper.Length];
        _fromLeft = new int[_trunkX.Length];
        _fromRight = new int[_trunkX.Length];
        int gutters = _w.Columns.Count + 1;
        _mostLeft = new int[gutters];
        _mostRight = new int[gutters];
        _left = new List<(int, int, int)>[gutters];
        _right = new List<(int, int, int)>[gutters];
        for (int g = 0; g < gutters; g++)
        {
            _left[g] = [];
            _right[g] = [];
        }

        GatherLabels();
    }

    /// <summary>Labels a sheet; where it comes out narrower than <paramref name="least"/> its gutters share what is missing.</summary>
    public static LabeledSheet Label(RoutedSheet routed, int least)
    {
        var labeler = new Labeler(routed);
        return labeler.Label(least);
    }

    private LabeledSheet Label(int least)
    {
        int gutters = _w.Columns.Count + 1, sum = 2 * Measure.Margin;
        int[] width = new int[gutters];
        for (int g = 0; g < gutters; g++)
        {
            width[g] = Needed(g);
            sum += width[g] + (g < _columnWidth.Length ? _columnWidth[g] : 0);
        }

        if (sum < least)
        {
            Spread(width, least - sum);
        }

        for (int g = 0; g < gutters; g++)
        {
            ShareSlack(g, width[g]);
        }

        var (zoneLeft, zoneRight) = Assemble(width, out int[] columnX, out int[] gutterX, out int right);
        for (int g = 0; g < gutters; g++)
        {
            foreach (int t in _routed.Tracks[g])
            {
                _trunkX[t] += gutterX[g];
            }
        }

        return new LabeledSheet
        {
            Routed = _routed,
            ColumnX = columnX,
            ColumnWidth = _columnWidth,
            GutterX = gutterX,
            GutterWidth = width,
            TrunkX = _trunkX,
            ZoneLeft = zoneLeft,
            ZoneRight = zoneRight,
            Width = right,
        };
    }

    // The outermost gutters get half of what the inner ones get.
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
        int[] width = new int[_w.Columns.Count];
        for (int c = 0; c < width.Length; c++)
        {
            width[c] = _w.Columns.IsWall[c] ? Measure.WallWidth : 20;
        }

        for (int b = 0; b < _model.Bodies; b++)
        {
            width[_w.Columns.Of[b]] = Math.Max(width[_w.Columns.Of[b]], _model.BodyWidth[b]);
        }

        return width;
    }

    private void GatherLabels()
    {
        for (int s = 0; s < _model.Slots; s++)
        {
            if (_model.SlotLabel[s] < 0)
            {
                continue;
            }

            var wire = _model.Graph.Wires[_model.SlotLabel[s]];
            int reach = LabelBox.Start(_model, s) + wire.LabelWidth + 2 - LabelBox.Inset(_placed, s, _columnWidth);
            int g = _w.NodeGutter[s];
            var row = (_placed.NodeY(s), Measure.HalfLabel(wire.LabelHeight), reach);
            if (_w.NodeOnRight[s])
            {
                _right[g].Add(row);
                _mostRight[g] = Math.Max(_mostRight[g], reach);
            }
            else
            {
                _left[g].Add(row);
                _mostLeft[g] = Math.Max(_mostLeft[g], reach);
            }
        }
    }

    private void Begin(int reach) => _sky.Reset(-64, _placed.Height + 64, reach);

    private void RaiseLabels(List<(int Y, int Half, int Reach)> labels, int less)
    {
        foreach (var (y, half, reach) in labels)
        {
            _sky.Raise(y - half, y + half, reach - less);
        }
    }

    private int Needed(int g)
    {
        int[] tracks = _routed.Tracks[g];
        Begin(Measure.WallClear - Measure.HalfTrack);
        RaiseLabels(_left[g], 0);
        foreach (int t in tracks)
        {
            _fromLeft[t] = _sky.Over(_routed.Upper[t], _routed.Lower[t]) + _routed.Half[t];
            _sky.Raise(_routed.Upper[t], _routed.Lower[t], _fromLeft[t] + _routed.Half[t]);
        }

        Begin(Measure.WallClear - Measure.HalfTrack);
        RaiseLabels(_right[g], 0);
        int width = Measure.LeastGutter;
        for (int i = tracks.Length - 1; i >= 0; i--)
        {
            int t = tracks[i];
            _fromRight[t] = _sky.Over(_routed.Upper[t], _routed.Lower[t]) + _routed.Half[t];
            _sky.Raise(_routed.Upper[t], _routed.Lower[t], _fromRight[t] + _routed.Half[t]);
            width = Math.Max(width, _fromLeft[t] + _fromRight[t]);
        }

        // Labels that face each other across the gutter.
        if (_left[g].Count > 0 && _right[g].Count > 0)
        {
            Begin(0);
            RaiseLabels(_left[g], 0);
            foreach (var (y, half, reach) in _right[g])
            {
                width = Math.Max(width, _sky.Over(y - half, y + half) + reach + 2);
            }
        }

        width = Math.Max(width, Math.Max(_mostLeft[g], _mostRight[g]) + 4);
        return IsZoneEdge(g) ? Math.Max(width, _mostLeft[g] + _mostRight[g] + 8) : width;
    }

    private bool IsZoneEdge(int g) => g > 0 && g < _w.Columns.Count && _w.Columns.Zone[g - 1] != _w.Columns.Zone[g];

    // Each track in the middle of its range, the order kept.
    private void ShareSlack(int g, int width)
    {
        Begin(int.MinValue / 2);
        foreach (int t in _routed.Tracks[g])
        {
            int middle = (_fromLeft[t] + width - _fromRight[t]) / 2;
            int x = Math.Max(middle, Math.Max(_fromLeft[t], _sky.Over(_routed.Upper[t], _routed.Lower[t]) + _routed.Half[t]));
            _trunkX[t] = Math.Min(x, width - _fromRight[t]);
            _sky.Raise(_routed.Upper[t], _routed.Lower[t], _trunkX[t] + _routed.Half[t]);
        }
    }

    private (int[] Left, int[] Right) Assemble(int[] width, out int[] columnX, out int[] gutterX, out int right)
    {
        int zones = _model.Zones, columns = _columnWidth.Length;
        int[] zoneLeft = new int[zones], zoneRight = new int[zones];
        columnX = new int[columns];
        gutterX = new int[columns + 1];
        int x = Measure.Margin;
        for (int g = 0; g <= columns; g++)
        {
            if (IsZoneEdge(g) && !_w.Columns.IsWall[g - 1])
            {
                OpenZone(_w.Columns.Zone[g], x + ((_mostLeft[g] + width[g] - _mostRight[g]) / 2), zoneLeft, zoneRight, ref x);
            }

            gutterX[g] = x;
            x += width[g];
            if (g == columns)
            {
                break;
            }

            columnX[g] = x;
            if (_w.Columns.IsWall[g])
            {
                int widen = Math.Max(0, zoneLeft[_w.Columns.Zone[g]] + Least(_w.Columns.Zone[g]) - x);
                x += widen;
                columnX[g] = x;
                zoneRight[_w.Columns.Zone[g]] = x;
                zoneLeft[_w.Columns.Zone[g] + 1] = x + _columnWidth[g];
                width[g] += widen;
            }

            x += _columnWidth[g];
        }

        right = x + Measure.Margin;
        if (zones > 0)
        {
            right = Math.Max(right, zoneLeft[zones - 1] + Least(zones - 1));
            zoneRight[zones - 1] = right;
        }

        return (zoneLeft, zoneRight);
    }

    private int Least(int zone) => _model.Graph.Zones[zone].HeadingWidth + Measure.Margin;

    private void OpenZone(int zone, int edge, int[] zoneLeft, int[] zoneRight, ref int x)
    {
        int widen = Math.Max(0, zoneLeft[zone - 1] + Least(zone - 1) - edge);
        x += widen;
        zoneLeft[zone] = zoneRight[zone - 1] = edge + widen;
    }
}
