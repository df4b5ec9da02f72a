using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Rules.Supply.Conductors;
using WireSketch.Topology;

namespace WireSketch.Sizing;

/// <summary>The sizes that <c>auto</c> chooses from, thinnest first.</summary>
internal static class SizeLadder
{
    /// <summary>Even American sizes, as shops stock them (common practice, no published source).</summary>
    private static readonly ImmutableArray<WireSize> American = [.. new[] { 18, 16, 14, 12, 10, 8, 6, 4, 2, 0, -1, -3 }.Select(WireSize.FromAwg)];

    /// <summary>Sizes of IEC 60228 from the thinnest that the ampacity table covers.</summary>
    private static readonly ImmutableArray<WireSize> Metric = [.. new[] { 1.0, 1.5, 2.5, 4, 6, 10, 16, 25, 35, 50, 70, 95, 120 }.Select(a => WireSize.FromArea(new(a)))];

    /// <summary>The sizes for one run: those that its terminals take; all if they take none of them.</summary>
    public static ImmutableArray<WireSize> For(Spec spec, WiredRun? run)
    {
        var all = For(spec);
        ImmutableArray<WireSize> taken = run is null ? all : [.. all.Where(s => SupplyTerminalTooSmall.Refusing(run, s) is null)];
        return taken.IsEmpty ? all : taken;
    }

    /// <summary>The system that <c>settings.sizes</c> names; else that of the file's first wire; else American.</summary>
    public static ImmutableArray<WireSize> For(Spec spec)
    {
        var first = spec.Runs.Select(r => r.Wire?.Size).FirstOrDefault(s => s is not null);
        var metric = spec.Settings.Sizes is { } named ? named.Value == SizeSystem.Metric : first is { Awg: null };
        return metric ? Metric : American;
    }
}
