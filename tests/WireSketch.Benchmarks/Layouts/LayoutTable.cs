using System.Globalization;
using System.Text;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>Prints figures as a table: a row for each class of graphs, ours beside the others'.</summary>
internal static class LayoutTable
{
    private static readonly CompositeFormat Columns = CompositeFormat.Parse(
        "{0,-26} {1,-5} {2,4} {3,5} {4,5} {5,5} {6,5} {7,5} {8,5} {9,5} {10,9} {11,7} {12,7} {13,6} {14,8}");

    public static void Heading()
    {
        Console.WriteLine(
            "Breaches: gear on gear, wire through gear, wire on wire, label on anything, loose end, outside, own rules (sides, walls, "
                + "zones).");
        Console.WriteLine(Line(
            "graphs", "by", "n", "gear", "thru", "on", "label", "loose", "outs", "own", "crossings", "bends", "detour", "pt", "seconds"));
    }

    public static void Row(string graphs, string by, Figures f)
    {
        int[] b = f.Broken;
        bool free = by == "dot";
        Console.WriteLine(Line(
            graphs, by, f.Drawings, b[1], b[2], b[3], b[4], free ? "-" : b[5], b[6], by == "ours" ? b[0] : "-", f.Crossings,
            Text(f.BendsPerRun, "0.00") + (free ? "*" : ""),
            Text(f.Detour, "0.00") + (free ? "*" : ""),
            Text(f.Text, "0.0"),
            Text(f.Seconds, "0.0")));
    }

    public static string Text(double v, string format) => v.ToString(format, CultureInfo.InvariantCulture);

    private static string Line(params object[] cells) => string.Format(CultureInfo.InvariantCulture, Columns, cells);
}
