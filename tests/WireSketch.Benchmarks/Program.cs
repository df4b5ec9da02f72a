using BenchmarkDotNet.Running;
using WireSketch.Benchmarks;

BenchmarkSwitcher.FromAssembly(typeof(SupplyTree).Assembly).Run(args);
