using System.Collections.Immutable;
using WireSketch.Drawing.Layout;

namespace WireSketch.Drawing.Scenes;

/// <summary>Parts the ways of a wire into polylines that do not lie on each other.</summary>
internal static class Polylines
{
    /// <summary>The first way whole; of each further one what lies beyond the ways before it.</summary>
    public static ImmutableArray<ImmutableArray<GridPoint>> Of(RoutedWire route)
    {
        var drawn = new List<(GridPoint A, GridPoint B)>();
        var polylines = ImmutableArray.CreateBuilder<ImmutableArray<GridPoint>>();
        foreach (var way in route.Polylines.Where(c => c.Length > 1))
        {
            var rest = Beyond(way, drawn);
            if (rest.Length > 1)
            {
                polylines.Add(rest);
                drawn.AddRange(rest.Zip(rest.Skip(1)));
            }
        }

        return polylines.ToImmutable();
    }

    /// <summary>Follows a way from its start as long as it lies on what is drawn.</summary>
    private static ImmutableArray<GridPoint> Beyond(ImmutableArray<GridPoint> way, List<(GridPoint A, GridPoint B)> drawn)
    {
        var at = way[0];
        var i = 1;
        while (i < way.Length && drawn.Count > 0)
        {
            var on = drawn.Where(s => Holds(s, at) && Runs(s, at, way[i]))
                .Select(s => Farthest(s, at, way[i]))
                .OrderByDescending(p => Distance(at, p))
                .FirstOrDefault(at);
            if (on == at)
            {
                break;
            }

            at = on;
            i += at == way[i] ? 1 : 0;
        }

        return i >= way.Length ? [] : [at, .. way.Skip(i)];
    }

    private static bool Holds((GridPoint A, GridPoint B) s, GridPoint p) =>
        p.X >= Math.Min(s.A.X, s.B.X) && p.X <= Math.Max(s.A.X, s.B.X) && p.Y >= Math.Min(s.A.Y, s.B.Y) && p.Y <= Math.Max(s.A.Y, s.B.Y);

    private static bool Runs((GridPoint A, GridPoint B) s, GridPoint from, GridPoint to) =>
        from != to && (from.X == to.X ? s.A.X == s.B.X && s.A.X == from.X : s.A.Y == s.B.Y && s.A.Y == from.Y);

    private static GridPoint Farthest((GridPoint A, GridPoint B) s, GridPoint from, GridPoint to) => new(
        Math.Clamp(to.X, Math.Min(s.A.X, s.B.X), Math.Max(s.A.X, s.B.X)), Math.Clamp(to.Y, Math.Min(s.A.Y, s.B.Y), Math.Max(s.A.Y, s.B.Y)));

    private static int Distance(GridPoint a, GridPoint b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);
}
