using System.Globalization;
using System.Text.RegularExpressions;

namespace WireSketch.Quantities;

/// <summary>
/// Lengths as a tape measure shows them: feet with inches, and fractions, such as <c>13 ft 3 in</c>, <c>6' 2"</c>, <c>15 1/2 ft</c> and
/// <c>3/8 in</c>.
/// </summary>
internal static partial class TapeWords
{
    private const string Fraction = @"(?:[0-9]{1,6} +)?[0-9]{1,4}/[0-9]{1,4}";

    private const string Feet = "ft|foot|feet|'";

    private const string Inches = "in|inch|inches|\"";

    private const string Parts = $@"(?:{Fraction}|[0-9]{{1,6}}(?:\.[0-9]{{0,6}})?)";

    /// <summary>What a schema may say of such words.</summary>
    internal const string Pattern = $"[0-9]{{1,6}} *(?:{Feet}) *{Parts} *(?:{Inches})|{Fraction} *(?:{Inches}|{Feet}|mm|cm|m)";

    /// <summary>Whether the words are of this form; if so, the meters they stand for, or what is wrong with them.</summary>
    internal static bool TryRead(string text, out double meters, out string trouble)
    {
        (meters, trouble) = (0, "");
        if (Both.Match(text) is { Success: true } both)
        {
            if (Number(both.Groups["inches"].Value) is { } inches && inches < 12)
            {
                meters = (double)((decimal.Parse(both.Groups["feet"].Value, NumberStyles.None, CultureInfo.InvariantCulture) * 0.3048m)
                    + (inches * 0.0254m));
            }
            else
            {
                trouble = $"\"{text}\" is no length: less than 12 in stands behind the feet";
            }

            return true;
        }

        if (Parted.Match(text) is { Success: true } parted)
        {
            var unit = Meters.Units.First(u =>
                u.Symbol == parted.Groups["unit"].Value || u.Also.Contains(parted.Groups["unit"].Value, StringComparer.Ordinal));
            if (Number(parted.Groups["number"].Value) is { } number)
            {
                meters = (double)(number * (decimal)unit.Factor);
            }
            else
            {
                trouble = $"\"{text}\" is no length: nothing can be parted into 0";
            }

            return true;
        }

        return false;
    }

    /// <summary>A decimal number, a fraction, or whole ones and a fraction; null if the fraction is none.</summary>
    private static decimal? Number(string words)
    {
        var parts = words.Split(' ', StringSplitOptions.RemoveEmptyEntries);
        if (parts[^1].Split('/') is not [var above, var below])
        {
            return Parse(words);
        }

        var by = Parse(below);
        return by == 0 ? null : (parts.Length > 1 ? Parse(parts[0]) : 0) + (Parse(above) / by);
    }

    private static decimal Parse(string digits) => decimal.Parse(digits, NumberStyles.AllowDecimalPoint, CultureInfo.InvariantCulture);

    [GeneratedRegex($@"\A(?<feet>[0-9]{{1,6}}) *(?:{Feet}) *(?<inches>{Parts}) *(?:{Inches})\z", RegexOptions.CultureInvariant)]
    private static partial Regex Both { get; }

    [GeneratedRegex($@"\A(?<number>{Fraction}) *(?<unit>{Inches}|{Feet}|mm|cm|m)\z", RegexOptions.CultureInvariant)]
    private static partial Regex Parted { get; }
}
