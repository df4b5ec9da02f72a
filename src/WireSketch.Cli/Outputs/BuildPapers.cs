using WireSketch.Papers;

namespace WireSketch.Cli.Outputs;

/// <summary>Everything that <c>build</c> writes for a spec, made before anything is written.</summary>
internal static class BuildPapers
{
    public static IReadOnlyList<Paper> Of(Compilation result, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        return [.. PaperSet.From(result).Papers];
    }
}
