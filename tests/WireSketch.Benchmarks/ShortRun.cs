using BenchmarkDotNet.Configs;
using BenchmarkDotNet.Jobs;
using BenchmarkDotNet.Toolchains.InProcess.Emit;

namespace WireSketch.Benchmarks;

/// <summary>
/// A few iterations in this process: what is measured takes milliseconds to seconds, and nothing else has to be built first.
/// </summary>
internal sealed class ShortRun : ManualConfig
{
    public ShortRun() =>
        AddJob(Job.Default.WithToolchain(InProcessEmitToolchain.Instance)
            .WithWarmupCount(4)
            .WithIterationCount(9)
            .WithInvocationCount(1)
            .WithUnrollFactor(1));
}
