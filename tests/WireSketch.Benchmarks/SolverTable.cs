using System.Globalization;
using BenchmarkDotNet.Reports;
using BenchmarkDotNet.Running;

namespace WireSketch.Benchmarks;

/// <summary>
/// Runs the benchmarks of the solver and prints how its time grows, and how it compares with ngspice's for the same deck in the same run.
/// </summary>
internal static class SolverTable
{
    public static int Print()
    {
        Summary[] summaries = [BenchmarkRunner.Run<SolverBenchmarks>(), BenchmarkRunner.Run<LargeSolverBenchmarks>()];
        var times = summaries.SelectMany(s => s.Reports).Where(r => r.ResultStatistics is not null)
            .ToLookup(
                r => (int)r.BenchmarkCase.Parameters["Nodes"],
                r => (r.BenchmarkCase.Descriptor.WorkloadMethod.Name, Seconds: r.ResultStatistics!.Median / 1e9));
        Console.WriteLine("  nodes  this solver   growth exponent   ngspice       ratio");
        var (nodesBefore, before) = (0, 0.0);
        foreach (var size in times.OrderBy(t => t.Key))
        {
            var ours = size.First(t => t.Name == nameof(SolverBenchmarks.WireSketch)).Seconds;
            var theirs = size.Where(t => t.Name == nameof(SolverBenchmarks.NgSpice)).Select(t => (double?)t.Seconds).FirstOrDefault();
            var growth = before > 0 ? Math.Log(ours / before) / Math.Log((double)size.Key / nodesBefore) : (double?)null;
            Console.WriteLine(string.Create(CultureInfo.InvariantCulture,
                $"{size.Key,7} {1e3 * ours,9:0.00} ms {growth,12:0.00}      {1e3 * theirs,10:0.0} ms {theirs / ours,8:0}"));
            (nodesBefore, before) = (size.Key, ours);
        }

        return times.Count == 4 ? 0 : 1;
    }
}
