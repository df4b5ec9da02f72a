using System.Text;
using System.Text.RegularExpressions;
using WireSketch.Quantities;

namespace WireSketch.Documents.Reports;

/// <summary>
/// Writes a formula with its numbers. A formula names symbols of its chapter and calculation; it knows + − · / ^, the squares ²,
/// brackets, π,
/// and √ min max sum ceil ln log10.
/// </summary>
internal static partial class Formula
{
    /// <summary>The formula with base-unit numbers in place of its symbols.</summary>
    public static string WithNumbers(string formula, Chapter chapter, Calculation calculation)
    {
        var known = chapter.Constants.Concat(calculation.Inputs)
            .Where(i => i.Symbol.Length > 0)
            .GroupBy(i => i.Symbol, StringComparer.Ordinal)
            .ToDictionary(g => g.Key, g => g.Last() is { Terms: { } terms } ? Sum(terms) : Number(g.Last().Value), StringComparer.Ordinal);
        foreach (var result in calculation.Values.Where(v => v is { Symbol.Length: > 0, Value: not null }))
        {
            known.TryAdd(result.Symbol, Number(result.Value));
        }

        return Names().Replace(formula, m => known.GetValueOrDefault(m.Value, m.Value));
    }

    private static string Number(double? value) => value switch
    {
        null => "unknown",
        < 0 => $"({Minus(Quantity.Digits(value.Value, ReportBuilder.FineDigits))})",
        _ => Quantity.Digits(value.Value, ReportBuilder.FineDigits),
    };

    private static string Sum(IReadOnlyCollection<Term> terms)
    {
        var sum = new StringBuilder();
        foreach (var term in terms)
        {
            sum.Append(sum.Length == 0 ? "" : " + ").Append(Number(term.Value));
        }

        return sum.Length == 0 ? "0" : sum.ToString();
    }

    private static string Minus(string number) => number.Replace('-', '−');

    /// <summary>Words that are no functions.</summary>
    [GeneratedRegex(@"[\p{L}_][\p{L}\p{Nd}_]*(?!\p{L}|\p{Nd}|_|\()")]
    private static partial Regex Names();
}
