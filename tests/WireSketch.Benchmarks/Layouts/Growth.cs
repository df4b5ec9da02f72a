using System.Diagnostics;
using WireSketch.Drawing.Layout;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>How the time for one sheet grows with its size, beside n·log n.</summary>
internal static class Growth
{
    private const int Runs = 3;

    public static void Run()
    {
        Console.WriteLine();
        Console.WriteLine(
            "Growth: one sheet with everything, the best of three, and its time by n·log n of the wires beside that of the first row.");
        double first = 0;
        foreach (int devices in (int[])[300, 1000, 3000, 3800])
        {
            var subject = Subject.Of(devices, 1);
            double best = double.PositiveInfinity;
            for (int k = 0; k < Runs; k++)
            {
                var watch = Stopwatch.StartNew();
                SheetArranger.Arrange(subject.Graph, subject.Options);
                best = Math.Min(best, watch.Elapsed.TotalSeconds);
            }

            int n = subject.Graph.Wires.Length;
            double unit = best / (n * Math.Log(n));
            first = first == 0 ? unit : first;
            Console.WriteLine(
                $"{devices,5} devices, {n,5} wires: {LayoutTable.Text(best, "0.00"),6} s, {LayoutTable.Text(unit / first, "0.00")} of "
                    + "n·log n");
        }
    }
}
