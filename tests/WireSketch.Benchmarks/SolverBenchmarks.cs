using System.Diagnostics;
using BenchmarkDotNet.Attributes;
using WireSketch.Electrical.Solver;

namespace WireSketch.Benchmarks;

/// <summary>
/// Time to the operating point of a supply tree, from the list of its branches on, by our solver and by ngspice as a whole process.
/// </summary>
[Config(typeof(ShortRun))]
public class SolverBenchmarks
{
    private DcCircuit circuit = new(1);
    private string deck = "";

    [Params(100, 1_000, 10_000)]
    public int Nodes { get; set; }

    [GlobalSetup]
    public void Make()
    {
        circuit = SupplyTree.Make(Nodes);
        deck = Path.Combine(Path.GetTempPath(), $"wiresketch-tree-{Nodes}.cir");
        File.WriteAllText(deck, SupplyTree.Deck(circuit));
    }

    [GlobalCleanup]
    public void Remove() => File.Delete(deck);

    [Benchmark(Baseline = true)]
    public double WireSketch()
    {
        var answer = DcSolver.Solve(circuit);
        return answer is DcSolution.Found ? answer.Volts[1] : throw new InvalidOperationException("No operating point.");
    }

    /// <summary>The Debian package ngspice must be installed.</summary>
    [Benchmark]
    public int NgSpice()
    {
        using var process =
            Process.Start(new ProcessStartInfo("ngspice", ["-b", deck]) { RedirectStandardOutput = true, RedirectStandardError = true })!;
        var error = process.StandardError.ReadToEndAsync();
        process.StandardOutput.ReadToEnd();
        process.WaitForExit();
        return error.Result.Contains("failed", StringComparison.OrdinalIgnoreCase)
            ? throw new InvalidOperationException(error.Result)
            : process.ExitCode;
    }
}
