using BenchmarkDotNet.Running;
using WireSketch.Benchmarks;

switch (args)
{
    case ["mistakes", .. var rest]:
        return MistakeTable.Print(rest);
    case ["solver"]:
        return SolverTable.Print();
    default:
        BenchmarkSwitcher.FromAssembly(typeof(SupplyTree).Assembly).Run(args);
        return 0;
}
