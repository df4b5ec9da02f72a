using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>
/// Fuses by construction: the ratings that are made, what they can break, and limits of their opening time. Blade ratings after
/// ISO 8820-3, strips after ISO 8820-5; which rows were read in a text and which are from memory stands in the data.
/// </summary>
public static class FuseTable
{
    private static readonly ImmutableArray<(string Style, double Rating, double? Breaking)> Ratings =
        [.. TableData.Rows("fuse-ratings.csv").Select(c => (c[0], Number(c[1])!.Value, Number(c[2])))];

    private static readonly ImmutableArray<(string Style, double Share, double Least, double Most)> Opening =
        [.. TableData.Rows("fuse-opening.csv").Select(c => (c[0], Number(c[1])!.Value / 100, Number(c[2])!.Value, Number(c[3])!.Value))];

    /// <summary>The constructions, smallest first.</summary>
    public static ImmutableArray<string> Styles { get; } = [.. Ratings.Select(r => r.Style).Distinct()];

    /// <summary>The ratings made in a construction, lowest first.</summary>
    public static ImmutableArray<Amps> RatingsOf(string style) => [.. Ratings.Where(r => r.Style == style).Select(r => new Amps(r.Rating)).Distinct().Order()];

    /// <summary>All ratings made in any construction, lowest first.</summary>
    public static ImmutableArray<Amps> AllRatings { get; } = [.. Ratings.Select(r => new Amps(r.Rating)).Distinct().Order()];

    /// <summary>The lowest rating made that is at least so much; null if there is none.</summary>
    public static Amps? NextAbove(Amps least, string? style)
    {
        foreach (var rating in style is null ? AllRatings : RatingsOf(style))
        {
            if (rating >= least)
            {
                return rating;
            }
        }

        return null;
    }

    /// <summary>What a construction can break; null if no figure is known.</summary>
    public static Amps? BreakingOf(string style) => Ratings.Where(r => r.Style == style && r.Breaking is not null).Select(r => (Amps?)new Amps(r.Breaking!.Value)).FirstOrDefault();

    /// <summary>
    /// The smallest construction that comes in a rating and can break a current; where none is known to, the smallest in that rating.
    /// </summary>
    public static string? StyleFor(Amps rating, Amps fault)
    {
        var made = Styles.Where(s => RatingsOf(s).Contains(rating)).ToArray();
        return made.FirstOrDefault(s => BreakingOf(s) is { } b && b >= fault) ?? made.FirstOrDefault(s => BreakingOf(s) is null) ?? made.FirstOrDefault();
    }

    /// <summary>
    /// The longest time within which a fuse must open at a multiple of its rating; null below the lowest limit, or where no
    /// limits are known for the construction. The limits are windows, not a curve: the limit of the next lower multiple counts.
    /// </summary>
    public static Seconds? OpensWithin(string style, double multiple) =>
        Opening.Where(o => o.Style == style && o.Share <= multiple).Select(o => (Seconds?)new Seconds(o.Most)).LastOrDefault();

    private static double? Number(string cell) => cell.Length == 0 ? null : double.Parse(cell, CultureInfo.InvariantCulture);
}
