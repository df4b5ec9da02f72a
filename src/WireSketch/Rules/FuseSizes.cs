using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Rules;

/// <summary>Ratings in which fuses are made, as far as rules suggest or judge one.</summary>
internal static class FuseSizes
{
    private static readonly ImmutableArray<double> Usual = [1, 2, 3, 4, 5, 7.5, 10, 15, 20, 25, 30, 35, 40, 50, 60, 70, 80, 100, 125, 150, 175, 200, 225, 250, 300, 350, 400, 450, 500];

    /// <summary>The highest rating that is not above a current; null if there is none.</summary>
    public static Amps? AtMost(Amps most, string? style) => Usual.Where(r => r <= most.Value + 1e-9).Select(r => (Amps?)new Amps(r)).LastOrDefault();

    /// <summary>The lowest rating that is not below a current; null if there is none.</summary>
    public static Amps? AtLeast(Amps least, string? style) => Usual.Where(r => r >= least.Value - 1e-9).Select(r => (Amps?)new Amps(r)).FirstOrDefault();

    /// <summary>Whether a style, or any style if none is named, is made in a rating.</summary>
    public static bool IsMade(Amps rating, string? style) => Usual.Any(r => Math.Abs(r - rating.Value) < 1e-9);

    /// <summary>
    /// The rating to suggest for a cable: the lowest that carries the load with a tenth to spare (common practice, no published
    /// source), if the cable allows it; else the highest that the cable allows. Null if the cable cannot carry the load.
    /// Where the load is unknown (none), it is the highest that the cable allows.
    /// </summary>
    public static Amps? For(Amps load, Amps ampacity, string? style = null) =>
        AtMost(ampacity, style) is { } most && most >= load
            ? load.Value <= 0 ? most : AtLeast(load / 0.9, style) is { } fits && fits <= most ? fits : most
            : null;
}
