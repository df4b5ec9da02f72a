using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Documents.Lists;

/// <summary>How much of one wire or cable is cut in all.</summary>
/// <param name="Words">The wire.</param>
/// <param name="Pieces">How many pieces.</param>
/// <param name="Total">Their cut lengths, summed.</param>
/// <param name="Longest">The longest of them.</param>
/// <param name="Type">The wire type, where the spec names one; it may say how the wire is sold.</param>
/// <param name="Stocks">How many stock lengths the pieces take, first-fit in order of falling length; null if it is not known how the
/// wire is sold.</param>
/// <param name="Runs">Runs it is used for.</param>
public sealed record WireTotal(
    string Words, int Pieces, Meters Total, Meters Longest, WireType? Type, int? Stocks, ImmutableArray<string> Runs)
{
    /// <summary>Totals by kind of wire, in order of first use; links made up from offcuts are left out.</summary>
    internal static ImmutableArray<WireTotal> Of(ImmutableArray<CutPiece> pieces) =>
    [
        .. pieces.Where(p => !p.IsMadeUp).GroupBy(p => WireDescriptions.Whole(p.Wire, p.Cores, p.Kind)).Select(g =>
        {
            var cuts = g.SelectMany(p => Enumerable.Repeat(p.Cut, p.Pieces)).OrderByDescending(c => c.Value).ToImmutableArray();
            var type = g.First().Wire.Type;
            return new WireTotal(
                g.Key,
                cuts.Length,
                new Meters(cuts.Sum(c => c.Value)),
                cuts[0],
                type,
                type?.StockLength is { } stock ? StocksFor(cuts, stock.Value) : null,
                [.. g.Select(p => p.RunId).Distinct()]);
        }),
    ];

    /// <summary>What to buy, in words.</summary>
    public string ToBuy(CutLength lengths)
    {
        if (Type?.StockLength is not { } stock)
        {
            return lengths.Both(Total);
        }

        return Stocks is { } n
            ? string.Create(CultureInfo.InvariantCulture, $"{n} x {stock}")
            : $"a piece is longer than the {stock} it is sold in";
    }

    /// <summary>
    /// First-fit decreasing: never more than 11/9 of the least number plus 6/9 (G. Dósa, 2007; from memory). Null if a piece is longer
    /// than the stock.
    /// </summary>
    private static int? StocksFor(ImmutableArray<Meters> falling, Meters stock)
    {
        const double tolerance = 1e-9;
        if (falling[0].Value > stock.Value + tolerance)
        {
            return null;
        }

        var left = new List<double>();
        foreach (var cut in falling.Select(c => c.Value))
        {
            var fits = left.FindIndex(l => l + tolerance >= cut);
            if (fits < 0)
            {
                left.Add(stock.Value - cut);
            }
            else
            {
                left[fits] -= cut;
            }
        }

        return left.Count;
    }
}
