using System.Collections.Immutable;
using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>The time within which a fuse opens.</summary>
/// <param name="Least">It does not open sooner; null if no limit is known.</param>
/// <param name="Most">It has opened by then; null if it need not open.</param>
/// <param name="IsStandIn">Nothing is published for that construction: the slowest published one stands in (common practice).</param>
public readonly record struct OpeningWindow(Seconds? Least, Seconds? Most, bool IsStandIn)
{
    /// <summary>
    /// The last published point, where the current lies beyond it: percent of the rating, and the time within which it opens there.
    /// </summary>
    public (double Percent, Seconds Most)? Beyond { get; init; }
}

/// <summary>
/// Fuses by construction: the ratings that are made, what they can break, limits of their opening time, and resistance. Blade ratings
/// after ISO 8820-3, strips after ISO 8820-5; which rows were read in a text and which are from memory stands in the data.
/// </summary>
public static class FuseTable
{
    private static readonly ImmutableArray<(FuseStyle Style, ImmutableArray<string> Families)> Constructions =
    [
        (FuseStyle.BladeMini, ["blade-mini"]),
        (FuseStyle.Blade, ["blade-regular"]),
        (FuseStyle.BladeMaxi, ["blade-maxi"]),
        (FuseStyle.Strip, ["strip-bolt-30mm", "strip-bolt-51mm"]),
        (FuseStyle.Wafer, ["bolt-wafer-small", "bolt-wafer-large"]),
        (FuseStyle.Cartridge, ["cartridge-6x32-glass", "cartridge-10x38-glass"]),
        (FuseStyle.ClassT, ["cartridge-class-t"]),
    ];

    private static readonly ImmutableArray<(FuseStyle Style, double Rating, double? Breaking)> Ratings =
        [
            .. CsvTable.Own("fuse-ratings").Rows
                .Select(r => (StyleOf(r["family"]), r.Number("rating_a"), r.NumberOrNone("breaking_capacity_a")))
        ];

    private static readonly ImmutableArray<(FuseStyle Style, double Percent, double? Least, double? Most)> Limits =
        [
            .. CsvTable.Own("fuse-time-current").Rows
                .Select(r => (StyleOf(r["family"]), r.Number("percent_of_rating"), r.NumberOrNone("min_s"), r.NumberOrNone("max_s")))
        ];

    private static readonly ImmutableArray<(FuseStyle Style, double Rating, double Ohms)> Resistances = ReadResistances();

    /// <summary>The constructions, smallest first.</summary>
    public static ImmutableArray<FuseStyle> Styles { get; } = [.. Constructions.Select(c => c.Style)];

    /// <summary>All ratings made in any construction, lowest first.</summary>
    public static ImmutableArray<Amps> AllRatings { get; } = [.. Ratings.Select(r => new Amps(r.Rating)).Distinct().Order()];

    /// <summary>The ratings made in a construction, lowest first.</summary>
    public static ImmutableArray<Amps> RatingsOf(FuseStyle style) => [
        .. Ratings.Where(r => r.Style == style).Select(r => new Amps(r.Rating)).Distinct().Order()
    ];

    /// <summary>What a construction can break; null if no figure is known.</summary>
    public static Amps? BreakingOf(FuseStyle? style) =>
        Ratings.Where(r => r.Style == style && r.Breaking is not null).Select(r => (Amps?)new Amps(r.Breaking!.Value)).FirstOrDefault();

    /// <summary>
    /// The smallest construction that comes in a rating and can break a current; where none is known to, the smallest in that rating.
    /// </summary>
    public static FuseStyle? StyleFor(Amps rating, Amps fault)
    {
        var made = Styles.Where(s => RatingsOf(s).Contains(rating)).Select(s => (FuseStyle?)s).ToArray();
        return made.FirstOrDefault(s => BreakingOf(s) is { } b && b >= fault)
            ?? made.FirstOrDefault(s => BreakingOf(s) is null) ?? made.FirstOrDefault();
    }

    /// <summary>
    /// Resistance at rated current, by type data of its construction and rating. Where there is none, what loses 58 mV at rated current:
    /// the cold resistances of the four type sheets seen give 56 to 60 mV. Half a milliohm if the rating is unknown (common practice).
    /// </summary>
    public static Ohms ResistanceOf(FuseStyle? style, Amps? rating)
    {
        var known = rating is { } amps && (style ?? StyleFor(amps, new(0))) is { } s
            ? Resistances.FirstOrDefault(x => x.Rating == amps.Value && x.Style == s).Ohms
            : 0;
        return known > 0 ? new(known) : rating is { Value: > 0 } r ? Assume.FuseDrop.Value / r : Assume.Fuse.Value;
    }

    /// <summary>
    /// The longest time within which a fuse, of unknown construction if none is named, must open at a multiple of its rating; null below
    /// the lowest limit.
    /// </summary>
    public static Seconds? OpensWithin(FuseStyle? style, double multiple) => OpeningOf(style, multiple).Most;

    /// <summary>
    /// Limits of the opening time at a multiple of the rating. The published points are limits, not a curve: between two of them the limit
    /// of the lower current holds. Beyond the last point the element melts before it loses heat, so its I²t stays and the time falls with
    /// the square of the current. Constructions without any published limit take those of the large blade, in proportion between its
    /// points.
    /// </summary>
    public static OpeningWindow OpeningOf(FuseStyle? style, double multiple)
    {
        // A ratio such as 1.1 is no whole number of percent in binary: the point itself must still be met.
        var percent = Math.Round(100 * multiple, 9);
        var own = Limits.Where(l => l.Style == style).ToArray();
        var standIn = own.Length == 0;

        // Points of one rating hold for its neighbors; where several rows give one point, the widest limits count.
        var points = (standIn ? Limits.Where(l => l.Style == FuseStyle.BladeMaxi) : own).GroupBy(l => l.Percent).OrderBy(g => g.Key)
            .Select(g => (Percent: g.Key, Least: g.Min(l => l.Least ?? 0), Most: g.Max(l => l.Most ?? double.PositiveInfinity))).ToArray();
        var least = points.Where(p => p.Percent >= percent && p.Least > 0).Select(p => p.Least).FirstOrDefault();
        var most = points.Where(p => p.Percent <= percent).Select(p => p.Most).DefaultIfEmpty(double.PositiveInfinity).Min();
        var last = points[^1];
        (double, Seconds)? beyond = null;
        if (percent > last.Percent)
        {
            beyond = (last.Percent, new(most));
            var fall = last.Percent / percent * (last.Percent / percent);
            (least, most) = (last.Least * fall, most * fall);
        }
        else if (standIn && double.IsFinite(most) && points.FirstOrDefault(p => p.Percent > percent) is { Percent: > 0 } above)
        {
            var below = points.Last(p => p.Percent <= percent);
            most = below.Most
                * Exact.Pow(above.Most / below.Most, Exact.Log(percent / below.Percent) / Exact.Log(above.Percent / below.Percent));
        }

        return new(least > 0 ? new Seconds(least) : null, double.IsFinite(most) ? new Seconds(most) : null, standIn) { Beyond = beyond };
    }

    private static FuseStyle StyleOf(string family) => Constructions.First(c => c.Families.Contains(family, StringComparer.Ordinal)).Style;

    /// <summary>The drop at rated current where it is known: hot, a fuse has up to 40 % more than its cold resistance.</summary>
    private static ImmutableArray<(FuseStyle, double, double)> ReadResistances()
    {
        var rows = CsvTable.Own("fuse-type-data").Rows;
        return
        [
            .. rows.Where(r => r["quantity"] == "voltage_drop")
                .Select(r => (StyleOf(r["family"]), r.Number("rating_a"), r.Number("value") / r.Number("rating_a"))),
            .. rows.Where(r => r["quantity"] == "cold_resistance")
                .Select(r => (StyleOf(r["family"]), r.Number("rating_a"), r.Number("value"))),
        ];
    }
}
