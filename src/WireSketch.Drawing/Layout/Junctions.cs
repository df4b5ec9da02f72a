using System.Collections.Immutable;
using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout;

/// <summary>Finds the points at which the wires of one net part: where a line leaves another other than at a terminal.</summary>
internal static class Junctions
{
    /// <summary>For each wire the dots that it is the first of its net to meet.</summary>
    public static ImmutableArray<GridPoint>[] Find(SheetModel model, ImmutableArray<ImmutableArray<GridPoint>>[] polylines)
    {
        var byNet = new List<int>[model.Nets];
        for (int w = 0; w < polylines.Length; w++)
        {
            (byNet[model.WireNet[w]] ??= []).Add(w);
        }

        var dots = new List<GridPoint>?[polylines.Length];
        foreach (var wires in byNet)
        {
            if (wires is not null && wires.Sum(w => polylines[w].Length) > 1)
            {
                FindInNet(wires, polylines, dots);
            }
        }

        return Array.ConvertAll(dots, d => d is null ? [] : d.ToImmutableArray());
    }

    private static void FindInNet(List<int> wires, ImmutableArray<ImmutableArray<GridPoint>>[] polylines, List<GridPoint>?[] dots)
    {
        var corners = new Dictionary<GridPoint, int>();
        var ends = new HashSet<GridPoint>();
        var segments = new List<(GridPoint A, GridPoint B)>();
        foreach (int w in wires)
        {
            foreach (var polyline in polylines[w])
            {
                ends.Add(polyline[0]);
                ends.Add(polyline[^1]);
                for (int i = 1; i < polyline.Length; i++)
                {
                    segments.Add((polyline[i - 1], polyline[i]));
                    if (i < polyline.Length - 1)
                    {
                        corners.TryAdd(polyline[i], w);
                    }
                }
            }
        }

        var rows = Index(segments, true);
        var columns = Index(segments, false);
        foreach (var (point, wire) in corners)
        {
            int ways = 0;
            if (rows.TryGetValue(point.Y, out var row))
            {
                ways |= Ways(row, point.X, 1);
            }

            if (columns.TryGetValue(point.X, out var column))
            {
                ways |= Ways(column, point.Y, 4);
            }

            if (int.PopCount(ways) > 2 && !ends.Contains(point))
            {
                (dots[wire] ??= []).Add(point);
            }
        }
    }

    private static Dictionary<int, List<(int From, int To)>> Index(List<(GridPoint A, GridPoint B)> segments, bool level)
    {
        var index = new Dictionary<int, List<(int, int)>>();
        foreach (var (a, b) in segments)
        {
            if ((a.Y == b.Y) == level)
            {
                int key = level ? a.Y : a.X, from = level ? a.X : a.Y, to = level ? b.X : b.Y;
                if (!index.TryGetValue(key, out var list))
                {
                    index.Add(key, list = []);
                }

                list.Add((Math.Min(from, to), Math.Max(from, to)));
            }
        }

        return index;
    }

    private static int Ways(List<(int From, int To)> spans, int at, int bit)
    {
        int ways = 0;
        foreach (var (from, to) in spans)
        {
            ways |= from < at && at <= to ? bit : 0;
            ways |= from <= at && at < to ? 2 * bit : 0;
        }

        return ways;
    }
}
