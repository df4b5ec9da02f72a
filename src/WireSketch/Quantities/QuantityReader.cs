using System.Globalization;

namespace WireSketch.Quantities;

/// <summary>Reads a value whose quantity is known by its base unit alone.</summary>
public static class QuantityReader
{
    /// <param name="words">A number with a unit of the quantity; for a count the number alone.</param>
    /// <param name="unit">The base unit, as <see cref="Quantity.BaseUnit{T}"/> gives it; empty for a count.</param>
    /// <param name="value">The number in the base unit.</param>
    /// <param name="rounding">Half a step of the last digit that is written, in the base unit: what rounding may have taken away.</param>
    /// <returns>False if the words are no value of that unit.</returns>
    public static bool TryRead(string words, string unit, out double value, out double rounding)
    {
        (value, rounding) = (0, 0);
        return unit switch
        {
            "V" => Read<Volts>(words, out value, out rounding),
            "A" => Read<Amps>(words, out value, out rounding),
            "ohm" => Read<Ohms>(words, out value, out rounding),
            "W" => Read<Watts>(words, out value, out rounding),
            "m" => Read<Meters>(words, out value, out rounding),
            "s" => Read<Seconds>(words, out value, out rounding),
            "Hz" => Read<Hertz>(words, out value, out rounding),
            "dB" => Read<Decibels>(words, out value, out rounding),
            "C" => Read<Celsius>(words, out value, out rounding),
            "Ah" => Read<AmpHours>(words, out value, out rounding),
            "F" => Read<Farads>(words, out value, out rounding),
            "H" => Read<Henries>(words, out value, out rounding),
            "1" => Read<Share>(words, out value, out rounding),
            "mm2" => WireSize.TryRead(words, out var size, out _) && (value = size.Area.Value) > 0,
            _ => Plain(words, unit, out value, out rounding),
        };
    }

    private static bool Read<T>(string words, out double value, out double rounding)
        where T : struct, IQuantity<T>
    {
        (value, rounding) = (0, 0);
        if (!Quantity.TryRead<T>(words, out var quantity, out _))
        {
            return false;
        }

        value = quantity.Value;
        var text = words.Trim();
        var length = Quantity.NumberLength(text);
        var unit = T.Units.FirstOrDefault(
            u => u.Symbol == text[length..].Trim() || u.Also.Contains(text[length..].Trim(), StringComparer.Ordinal));
        rounding = Half(text[..length]) * (unit?.Factor ?? 0);
        return true;
    }

    private static bool Plain(string words, string unit, out double value, out double rounding)
    {
        var text = words.Trim();
        var length = Quantity.NumberLength(text);
        rounding = Half(text[..length]);
        return double.TryParse(text.AsSpan(0, length), NumberStyles.Float, CultureInfo.InvariantCulture, out value)
            && text[length..].Trim() == unit;
    }

    private static double Half(string number)
    {
        var half = 0.5;
        for (var i = number.IndexOf('.', StringComparison.Ordinal) + 1; i > 0 && i < number.Length; i++)
        {
            half /= 10;
        }

        return half;
    }
}
