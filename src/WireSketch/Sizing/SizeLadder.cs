using System.Collections.Immutable;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Sizing;

/// <summary>The sizes that <c>auto</c> chooses from, thinnest first.</summary>
internal static class SizeLadder
{
    /// <summary>From the thinnest that the ampacity table covers.</summary>
    private static readonly ImmutableArray<WireSize> Metric = [.. WireSizes.Metric.Where(s => s.Area >= AmpacityTable.Sizes[0].Area)];

    /// <summary>The sizes for one run: those that its terminals take; all if they take none of them.</summary>
    public static ImmutableArray<WireSize> For(Spec spec, WiredRun? run)
    {
        var all = For(spec);
        ImmutableArray<WireSize> taken = run is null ? all : [.. all.Where(s => TerminalSizes.Refusing(run, s) is null)];
        return taken.IsEmpty ? all : taken;
    }

    /// <summary>The system that <c>settings.sizes</c> names; else that of the file's first wire; else American.</summary>
    public static ImmutableArray<WireSize> For(Spec spec)
    {
        var first = spec.Runs.Select(r => r.Wire?.Size).FirstOrDefault(s => s is not null);
        var metric = spec.Settings.Sizes is { } named ? named.Value == SizeSystem.Metric : first is { Awg: null };
        return metric ? Metric : WireSizes.American;
    }
}
