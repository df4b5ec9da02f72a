using WireSketch.Drawing.Layout.P4Route;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>What a sheet costs, in thousandths of half a crossing.</summary>
internal static class Pricing
{
    public const int Crossing = 2000, Clash = 30000;
    private const int Bend = 200, Length = 3, DetourFrom = 1320, Detour = 100, BelowFloor = 10000;
    private const int Together = 2, Readable = 3, Jog = 150, ShortestStretch = 10;

    public static long Of(LabeledSheet sheet, Page page)
    {
        var (bends, jogs, length, manhattan) = Measure(sheet);
        int text = page.TextOf(sheet.Width, sheet.Height), shortfall = Math.Max(0, page.Floor - text);
        long detour = length * 1000 / Math.Max(1, manhattan);
        return Rough(sheet.Routed) + (Bend * bends) + (Jog * jogs) + (Length * (length - manhattan)) + (length / Together)
            + (Math.Max(0, detour - DetourFrom) * Detour)
            + (shortfall > 0 ? BelowFloor + ((long)shortfall * page.Slope) : 0)
            - (Math.Min(text, 800) * Readable);
    }

    /// <summary>Corners of all wires.</summary>
    public static long Bends(LabeledSheet sheet) => Measure(sheet).Bends;

    /// <summary>The part of the price that is known before labels are placed.</summary>
    public static long Rough(RoutedSheet routed) => ((long)routed.Crossings * Crossing) + ((long)routed.Clashes.Count * Clash);

    private static (long Bends, long Jogs, long Length, long Manhattan) Measure(LabeledSheet sheet)
    {
        var polylines = new PolylineBuilder(sheet);
        long bends = 0, jogs = 0, length = 0, manhattan = 0;
        for (int l = 0; l < sheet.Graph.Model.Links; l++)
        {
            var points = polylines.Build(l);
            bends += points.Count - 2;
            for (int i = 1; i < points.Count; i++)
            {
                int d = Math.Abs(points[i].X - points[i - 1].X) + Math.Abs(points[i].Y - points[i - 1].Y);
                length += d;
                jogs += d < ShortestStretch && i > 1 && i < points.Count - 1 ? 1 : 0;
            }

            manhattan += Math.Abs(points[^1].X - points[0].X) + Math.Abs(points[^1].Y - points[0].Y);
        }

        foreach (var s in sheet.Graph.Model.Satellites)
        {
            length += s.Drop;
            manhattan += s.Drop;
        }

        return (bends, jogs, length, manhattan);
    }
}
