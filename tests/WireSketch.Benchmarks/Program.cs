using BenchmarkDotNet.Running;
using WireSketch.Benchmarks;

switch (args)
{
    case ["mistakes", .. var rest]:
        return MistakeTable.Print(rest);
    default:
        BenchmarkSwitcher.FromAssembly(typeof(SupplyTree).Assembly).Run(args);
        return 0;
}
