using BenchmarkDotNet.Running;
using WireSketch.Benchmarks;
using WireSketch.Benchmarks.Layouts;

switch (args)
{
    case ["layout", .. var rest]:
        return LayoutCommand.Run(rest);
    case ["mistakes", .. var rest]:
        return MistakeTable.Print(rest);
    case ["house", .. var rest]:
        return HouseTable.Print(rest);
    case ["solver"]:
        return SolverTable.Print();
    default:
        BenchmarkSwitcher.FromAssembly(typeof(SupplyTree).Assembly).Run(args);
        return 0;
}
