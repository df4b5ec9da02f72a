using BenchmarkDotNet.Running;
using WireSketch.Benchmarks;
using WireSketch.Benchmarks.Layouts;

// layout: a table of layouts beside those of general libraries. Anything else goes to BenchmarkDotNet.
if (args is ["layout", .. var rest])
{
    return LayoutCommand.Run(rest);
}

BenchmarkSwitcher.FromAssembly(typeof(SupplyTree).Assembly).Run(args);
return 0;
