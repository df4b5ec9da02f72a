using System.Globalization;
using System.Text.RegularExpressions;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>What somebody probably meant by a quantity that cannot be read. Whatever is suggested can be read.</summary>
internal static partial class AmountCures
{
    /// <summary>The quantity that is meant; null if nothing is plain.</summary>
    internal static string? Of<T>(string words)
        where T : struct, IQuantity<T>
    {
        var number = Quantity.NumberLength(words);
        var unit = words[number..].Trim();
        var better = default(T) switch
        {
            Meters when FeetAndBareInches().Match(words) is { Success: true } m => $"{m.Groups[1].Value} ft {m.Groups[2].Value} in",
            Share when PercentFirst().Match(words) is { Success: true } m => $"{m.Groups[1].Value} %",
            Share when unit.Length == 0
                && double.TryParse(words, NumberStyles.Float, CultureInfo.InvariantCulture, out var part)
                && part is > 0 and <= 1 => $"{Quantity.Digits(part * 100, 4)} %",
            _ when number > 0 && unit.Length > 0
                && T.Units.FirstOrDefault(u => u.Symbol.StartsWith(unit, StringComparison.OrdinalIgnoreCase)) is { } longer =>
                $"{words[..number]} {longer.Symbol}",
            _ => null,
        };
        return better is not null && Quantity.TryRead<T>(better, out _, out _) ? better : null;
    }

    /// <summary>A multiple that is meant: <c>4 ohm x 2</c>, <c>dual 4 ohm</c>, <c>2 x 4</c>; null if nothing is plain.</summary>
    internal static string? Multiple<T>(string words)
        where T : struct, IQuantity<T>
    {
        var (count, each) = Straight().Match(words) is { Success: true } m ? (m.Groups[1].Value, m.Groups[2].Value)
            : Turned().Match(words) is { Success: true } turned ? (turned.Groups[2].Value, turned.Groups[1].Value)
            : InWords().Match(words) is { Success: true } said ? (CountOf(said.Groups[1].Value), said.Groups[2].Value)
            : ("", "");
        if (count.Length == 0)
        {
            return null;
        }

        each = Quantity.NumberLength(each) == each.Length ? $"{each} {Quantity.UsualUnit<T>()}" : each;
        return Quantity.TryRead<T>(each, out _, out _) ? $"{count} x {each}" : null;
    }

    /// <summary>A range that is meant: <c>0.2 V - 5 V</c>, <c>0.2-5 V</c>; null if nothing is plain.</summary>
    internal static string? Range<T>(string words)
        where T : struct, IQuantity<T>
    {
        if (Span().Match(words) is not { Success: true } span)
        {
            return null;
        }

        var (first, last) = (span.Groups[1].Value.Trim(), span.Groups[2].Value.Trim());
        first = Quantity.NumberLength(first) == first.Length ? $"{first} {last[Quantity.NumberLength(last)..].Trim()}" : first;
        return Quantity.TryRead<T>(first, out _, out _) && Quantity.TryRead<T>(last, out _, out _) ? $"{first} to {last}" : null;
    }

    /// <summary>The map that is meant by rating and place of a fuse in one text; null if it is no such text.</summary>
    internal static string? Fuse(string words)
    {
        if (FuseAt().Match(words) is not { Success: true } fuse)
        {
            return null;
        }

        var (rating, at) = (fuse.Groups[1].Value.Trim(), fuse.Groups[2].Value.Trim());
        rating = Quantity.NumberLength(rating) == rating.Length ? rating + " A" : rating;
        at = Quantity.NumberLength(at) == at.Length ? at + " in" : at;
        return Quantity.TryRead<Amps>(rating, out var amps, out _) && Quantity.TryRead<Meters>(at, out _, out _)
            ? $"{{ rating: {Quantity.Print(amps)}, at: {at} }}"
            : null;
    }

    private static string CountOf(string word) => word.ToLowerInvariant() switch
    {
        "single" => "1",
        "triple" => "3",
        "quad" => "4",
        _ => "2",
    };

    [GeneratedRegex(@"^([0-9]+)\s*(?:ft|feet|foot|')\s*([0-9]+(?:\.[0-9]+)?)$")]
    private static partial Regex FeetAndBareInches();

    [GeneratedRegex(@"^%\s*([0-9.]+)$")]
    private static partial Regex PercentFirst();

    [GeneratedRegex(@"^(.*[^\s])\s*[x×*]\s*([0-9]+)$")]
    private static partial Regex Turned();

    [GeneratedRegex(@"^(single|dual|double|twin|triple|quad)\s+(.+)$", RegexOptions.IgnoreCase)]
    private static partial Regex InWords();

    [GeneratedRegex(@"^([0-9]+)\s*[x×*]\s*(.+)$")]
    private static partial Regex Straight();

    [GeneratedRegex(@"^([0-9.]+\s*\p{L}*)\s*(?:-|–|—|\.\.\.?|…)\s*([0-9.]+\s*\p{L}+)$")]
    private static partial Regex Span();

    [GeneratedRegex(@"^([0-9.]+\s*[A-Za-z]*)\s*(?:at|@)\s*(.+)$")]
    private static partial Regex FuseAt();
}
