using System.Collections.Immutable;
using System.Globalization;

namespace WireSketch.Quantities;

/// <summary>Reads and prints quantities as people write them, the same in every culture.</summary>
public static class Quantity
{
    /// <summary>Reads a number with its unit, the space between them optional, the whole of the words.</summary>
    /// <param name="words">Such as <c>4.5 V</c>.</param>
    /// <param name="value">The value in the base unit.</param>
    /// <param name="trouble">What is wrong and which units fit; empty if nothing is.</param>
    public static bool TryRead<T>(string words, out T value, out string trouble)
        where T : struct, IQuantity<T>
    {
        value = default;
        var text = words.Trim();
        if (typeof(T) == typeof(Meters) && TapeWords.TryRead(text, out var meters, out trouble))
        {
            value = T.From(meters);
            return trouble.Length == 0;
        }

        var split = NumberLength(text);
        if (split == 0)
        {
            trouble = $"\"{words}\" is not {T.Noun}: write a number with its unit, such as {Example<T>()}";
            return false;
        }

        var unit = text[split..].Trim();
        if (unit.Length == 0)
        {
            trouble = $"\"{words}\" has no unit: {T.Noun} is written with {UnitList<T>()}, such as {text} {UsualUnit<T>()}";
            return false;
        }

        foreach (var candidate in T.Units)
        {
            if (candidate.Symbol == unit || candidate.Also.Contains(unit, StringComparer.Ordinal))
            {
                value = T.From(InBaseUnits(text.AsSpan(0, split), candidate));
                if (!double.IsFinite(value.Value))
                {
                    trouble = $"\"{words}\" is too large a number";
                    return false;
                }

                trouble = "";
                return true;
            }
        }

        if (DecimalComma.In(text) is not null)
        {
            trouble = $"\"{words}\" has a comma in its number: decimals stand behind a point, and thousands are not parted";
            return false;
        }

        if (unit.Length > 1 && unit[0] is 'e' or 'E' && (char.IsAsciiDigit(unit[1]) || unit[1] is '+' or '-'))
        {
            trouble = $"\"{words}\" is written with an exponent: write the number in full";
            return false;
        }

        trouble = $"\"{unit}\" is not a unit of {T.Noun.Split(' ', 2)[1]}: {UnitList<T>()} would fit";
        return false;
    }

    /// <summary>
    /// The number nearest to what is written: 70 % is 0.7 and no hair more, so that what is written alike computes alike.
    /// </summary>
    private static double InBaseUnits(ReadOnlySpan<char> number, Unit unit) => number.Length <= 15 && unit.Offset == 0
        ? (double)(decimal.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture) * (decimal)unit.Factor)
        : (double.Parse(number, NumberStyles.Float, CultureInfo.InvariantCulture) * unit.Factor) + unit.Offset;

    /// <summary>Volts and amps below this are what rounding leaves of nothing: no meter shows them.</summary>
    private const double Unseen = 1e-8;

    /// <summary>Prints a value in the unit that reads best, to three significant digits.</summary>
    public static string Print<T>(T value, int digits = 3)
        where T : struct, IQuantity<T> =>
        value is Volts or Amps && Math.Abs(value.Value) < Unseen ? $"0 {T.Units[1].Symbol}" : PrintIn(value, BestUnit(value), digits);

    /// <summary>Prints a value in a unit of one's choice.</summary>
    public static string PrintIn<T>(T value, Unit unit, int digits = 3)
        where T : struct, IQuantity<T> => $"{Digits((value.Value - unit.Offset) / unit.Factor, digits)} {unit.Symbol}";

    /// <summary>A number to so many significant digits, never in exponent form, whole digits always kept.</summary>
    public static string Digits(double number, int digits)
    {
        if (number == 0 || !double.IsFinite(number))
        {
            return number == 0 ? "0" : number > 0 ? "unlimited" : "none";
        }

        var whole = (int)Math.Floor(Exact.Log10(Math.Abs(number))) + 1;
        var decimals = Math.Clamp(digits - whole, 0, 12);
        // Adding nothing turns a minus zero into a plain one.
        var text = (Math.Round(number, decimals, MidpointRounding.AwayFromZero) + 0.0).ToString(
            "F" + decimals.ToString(CultureInfo.InvariantCulture),
            CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }

    /// <summary>The units of a quantity in words: "mV or V".</summary>
    public static string UnitList<T>()
        where T : struct, IQuantity<T> =>
        T.Units.Length == 1 ? T.Units[0].Symbol : $"{string.Join(", ", T.Units[..^1].Select(u => u.Symbol))} or {T.Units[^1].Symbol}";

    /// <summary>The unit in which a quantity holds its number; <c>1</c> for a share.</summary>
    public static string BaseUnit<T>()
        where T : struct, IQuantity<T> => T.Units.FirstOrDefault(u => u is { Factor: 1, Offset: 0 })?.Symbol ?? "1";

    /// <summary>The unit that people mostly write: feet for a length, watts, volts, ohms.</summary>
    internal static string UsualUnit<T>()
        where T : struct, IQuantity<T> => default(T) switch
        {
            Meters or Seconds => T.Units[^1].Symbol,
            _ => (T.Units.FirstOrDefault(u => u is { Factor: 1, Offset: 0 }) ?? T.Units[0]).Symbol,
        };

    /// <summary>How many characters at the start of a text are a decimal number.</summary>
    internal static int NumberLength(string text)
    {
        var i = 0;
        if (i < text.Length && (text[i] is '-' or '+'))
        {
            i++;
        }

        var digits = 0;
        var points = 0;
        while (i < text.Length && (char.IsAsciiDigit(text[i]) || (text[i] == '.' && points == 0)))
        {
            digits += text[i] == '.' ? 0 : 1;
            points += text[i] == '.' ? 1 : 0;
            i++;
        }

        return digits == 0 ? 0 : i;
    }

    private static string Example<T>()
        where T : struct, IQuantity<T> => $"4 {T.Units[Math.Min(1, T.Units.Length - 1)].Symbol}";

    private static Unit BestUnit<T>(T value)
        where T : struct, IQuantity<T>
    {
        var size = Math.Abs(value.Value);
        return value switch
        {
            Volts => T.Units[size is > 0 and < 0.1 ? 0 : 1],
            Amps => T.Units[size is > 0 and < 0.1 ? 0 : 1],
            Ohms => T.Units[size is > 0 and < 0.1 ? 0 : size >= 1000 ? 2 : 1],
            Watts => T.Units[size >= 10000 ? 1 : 0],
            Meters => T.Units[size is > 0 and < 1 ? 0 : 2],
            Hertz => T.Units[size >= 10000 ? 1 : 0],
            Farads => T.Units[size < 0.01 ? 0 : 1],
            Henries => T.Units[size < 0.0001 ? 0 : 1],
            Seconds => T.Units[size >= 7200 ? 3 : size is > 0 and < 1 ? 0 : 1],
            _ => T.Units[0],
        };
    }
}
