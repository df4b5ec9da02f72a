using BenchmarkDotNet.Attributes;
using WireSketch.Electrical.Solver;

namespace WireSketch.Benchmarks;

/// <summary>Our solver alone, at a size for which ngspice takes minutes.</summary>
[Config(typeof(ShortRun))]
public class LargeSolverBenchmarks
{
    private DcCircuit circuit = new(1);

    [Params(50_000)]
    public int Nodes { get; set; }

    [GlobalSetup]
    public void Make() => circuit = SupplyTree.Make(Nodes);

    [Benchmark]
    public double WireSketch()
    {
        var answer = DcSolver.Solve(circuit);
        return answer is DcSolution.Found ? answer.Volts[1] : throw new InvalidOperationException("No operating point.");
    }
}
