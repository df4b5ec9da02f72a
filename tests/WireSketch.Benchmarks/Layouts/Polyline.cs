using System.Collections.Immutable;
using WireSketch.Drawing.Layout;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>Brings the coordinates of others to whole numbers and their lines to corners.</summary>
internal static class Polyline
{
    /// <summary>Whole numbers to one unit, so that rounding bends nothing.</summary>
    public const int Scale = 16;

    public static int Whole(double v) => (int)Math.Round(v * Scale);

    public static GridPoint Point(double x, double y) => new(Whole(x), Whole(y));

    public static GridRect Box(double x, double y, double width, double height)
    {
        var (a, b) = (Point(x, y), Point(x + width, y + height));
        return new(a.X, a.Y, b.X - a.X, b.Y - a.Y);
    }

    /// <summary>The polyline without repeated points and points in line.</summary>
    public static ImmutableArray<GridPoint> Corners(IEnumerable<GridPoint> points)
    {
        var polyline = new List<GridPoint>();
        foreach (var p in points)
        {
            if (polyline.Count > 0 && polyline[^1] == p)
            {
                continue;
            }

            if (polyline.Count > 1 && InLine(polyline[^2], polyline[^1], p))
            {
                polyline[^1] = p;
                continue;
            }

            polyline.Add(p);
        }

        if (polyline.Count == 1)
        {
            polyline.Add(polyline[0]);
        }

        return [.. polyline];
    }

    private static bool InLine(GridPoint a, GridPoint b, GridPoint c) => (a.X == b.X && b.X == c.X) || (a.Y == b.Y && b.Y == c.Y);
}
