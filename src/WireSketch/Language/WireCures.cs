using System.Text.RegularExpressions;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>
/// What somebody probably meant by words under <c>wire</c> that cannot be read: sizes as they are said across the counter.
/// </summary>
internal static partial class WireCures
{
    /// <summary>The words that are meant; null if nothing is plain. Whether they can be read is for the caller to see.</summary>
    internal static string? Of(string words)
    {
        if (TradeWords.Wire(words) is { } ready)
        {
            return ready;
        }

        var text = LetterO().Replace(words.Trim(), "0");
        var color = "";
        if (text.Split(' ', 2) is [var first, var behind] && first.Split('/').All(c => ConductorColor.Of(c) is not null))
        {
            (color, text) = (" " + first, behind.Trim());
        }

        var better = Cores().Match(text) is { Success: true } cores ? $"{cores.Groups[1].Value} x {SizeFirst(cores.Groups[2].Value)}"
            : House().Match(text) is { Success: true } house
                ? $"{house.Groups[2].Value} x {house.Groups[1].Value} AWG{Rest(house.Groups[3].Value)}"
            : SizeFirst(text);
        return better + color is var meant && meant != words ? meant : null;
    }

    private static string SizeFirst(string text)
    {
        if (Metric().Match(text) is { Success: true } metric)
        {
            return $"{metric.Groups[1].Value} mm2{Rest(metric.Groups[2].Value)}";
        }

        var gauge = WordFirst().Match(text) is { Success: true } said ? said : NumberFirst().Match(text);
        return gauge.Success ? $"{Number(gauge.Groups[1].Value)} AWG{Rest(gauge.Groups[2].Value)}" : text;
    }

    /// <summary>0 and 00 as 1/0 and 2/0.</summary>
    private static string Number(string digits) => digits.All(c => c == '0') ? $"{digits.Length}/0" : digits;

    private static string Rest(string words) => words.Trim() is { Length: > 0 } rest ? " " + rest : "";

    /// <summary>Whether a size stands where it must, so that a suggestion is worth making.</summary>
    internal static bool BeginsWithSize(string words)
    {
        var text = CoresBefore().Replace(words, "");
        return text == "line pair"
            || text.Split(' ') is [var number, var unit, ..] && WireSize.TryRead($"{number} {unit}", out _, out _);
    }

    [GeneratedRegex(@"(?<=[0-9]/?)[oO](?=[\s/]|AWG|$)|(?<=\b[1-4]/)[oO]\b")]
    private static partial Regex LetterO();

    [GeneratedRegex(@"^([0-9]{1,2})\s*[x×*]\s*([0-9].*)$")]
    private static partial Regex Cores();

    [GeneratedRegex(@"^[0-9]+ x ")]
    private static partial Regex CoresBefore();

    [GeneratedRegex(@"^([1-9][0-9]?)/([2-9])(?![0-9])(?:\s*AWG|\s*ga\.?|\s*gauge)?(.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex House();

    [GeneratedRegex(
        @"^([0-9]+(?:\.[0-9]+)?)\s*(?:mm\s*2|mm²|mm\^2|sq\.?\s*mm|mm\s*sq\.?|qmm|square\s+mm|square\s+millimet(?:er|re)s?)(?![0-9])(.*)$",
        RegexOptions.IgnoreCase)]
    private static partial Regex Metric();

    [GeneratedRegex(@"^(?:AWG|gauge|ga\.?|no\.?|number|#)\s*([1-4]/0|[0-9]{1,2}(?![0-9/]))(.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex WordFirst();

    [GeneratedRegex(@"^([1-4]/0|0{1,4}|[0-9]{1,2})(?![0-9/.])\s*(?:AWG\b|gauge\b|ga\b\.?|g\b)?(.*)$", RegexOptions.IgnoreCase)]
    private static partial Regex NumberFirst();
}
