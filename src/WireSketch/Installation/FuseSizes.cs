using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Ratings in which fuses are made, as far as rules suggest or judge one.</summary>
internal static class FuseSizes
{
    /// <summary>Share of the rating up to which a fuse is loaded for long (common practice, no published source).</summary>
    public const double Comfortable = 0.9;

    /// <summary>Whether a load is more than a fuse carries for long; what the solver rounds off decides nothing.</summary>
    public static bool IsBeyondComfort(Amps load, Amps rating) => load.Value > rating.Value * Comfortable * (1 + 1e-9);

    /// <summary>What shops stock: where no style is named, only these are suggested (common practice, no published source).</summary>
    private static readonly ImmutableArray<Amps> Usual = [
        .. new[] { FuseStyle.Blade, FuseStyle.BladeMaxi, FuseStyle.Strip }.SelectMany(s => FuseTable.RatingsOf(s)).Distinct().Order()
    ];

    /// <summary>The highest rating that is not above a current; null if there is none.</summary>
    public static Amps? AtMost(Amps most, FuseStyle? style) => Of(style).Where(r => r <= most).Select(r => (Amps?)r).LastOrDefault();

    /// <summary>The lowest rating that is not below a current; null if there is none.</summary>
    public static Amps? AtLeast(Amps least, FuseStyle? style) => Of(style).Where(r => r >= least).Select(r => (Amps?)r).FirstOrDefault();

    /// <summary>Whether a style, or any style if none is named, is made in a rating.</summary>
    public static bool IsMade(Amps rating, FuseStyle? style) =>
        (style is null ? FuseTable.AllRatings : FuseTable.RatingsOf(style.Value)).Contains(rating);

    /// <summary>
    /// The rating to suggest for a cable: the lowest that carries the load with a tenth to spare (common practice, no published
    /// source), if the cable allows it; else the highest that the cable allows. Null if the cable cannot carry the load.
    /// Where the load is unknown (none), it is the highest that the cable allows.
    /// </summary>
    public static Amps? For(Amps load, Amps ampacity, FuseStyle? style = null) =>
        AtMost(ampacity, style) is { } most && most >= load
            ? load.Value <= 0 ? most : AtLeast(load / Comfortable, style) is { } fits && fits <= most ? fits : most
            : null;

    /// <summary>The fuse of a run: its inline one, or that of the block it comes from; null if it has none.</summary>
    public static InternalConnection? LinkOf(Wiring wiring, WiredRun run) =>
        wiring.Links.FirstOrDefault(l =>
            l.Protects && (run.Holder is null ? run.Conductors.Any(c => c.From.Index == l.B.Index) : ReferenceEquals(l.Gear, run.Holder)));

    /// <summary>
    /// The least that a fuse must carry: the load with a tenth to spare, and as much as any device behind it has of its own (common
    /// practice,
    /// no published source); never less than 1 A.
    /// </summary>
    public static Amps Least(InstalledSystem install, InternalConnection link, Amps load) =>
        new(Math.Max(Math.Max(1, load.Value / Comfortable), DeviceFuses.Largest(install, link)?.Fuse.Value.Value ?? 0));

    private static ImmutableArray<Amps> Of(FuseStyle? style) => style is null ? Usual : FuseTable.RatingsOf(style.Value);
}
