using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>Which values of a quantity make sense at all in a spec.</summary>
internal static class Limits
{
    /// <summary>What is wrong with a value; null if nothing is.</summary>
    /// <param name="value">The value.</param>
    /// <param name="words">As it is written.</param>
    /// <param name="zero">Whether nothing at all makes sense.</param>
    internal static string? Trouble<T>(T value, string words, bool zero)
        where T : struct, IQuantity<T>
    {
        var noun = T.Noun.Split(' ', 2)[1];
        return value switch
        {
            Decibels => null,
            Celsius { Value: < -273.15 } => $"{words} is colder than anything can be",
            Celsius => null,
            Share { Value: > 1 } => $"{words} is more than all of it",
            { Value: < 0 } => $"{words} is less than nothing: {noun} cannot be negative here",
            { Value: 0 } when !zero => $"{words} is nothing at all: {noun} cannot be zero here",
            _ => null,
        };
    }

    /// <summary>A typical value with its unit, for messages and the reference page.</summary>
    internal static string Example<T>()
        where T : struct, IQuantity<T> => default(T) switch
        {
            Volts => "12.6 V",
            Amps => "60 A",
            Ohms => "4 ohm",
            Watts => "250 W",
            Meters => "17 ft",
            Hertz => "80 Hz",
            Farads => "1 F",
            Henries => "0.5 mH",
            Seconds => "3 h",
            AmpHours => "60 Ah",
            Celsius => "105 C",
            Decibels => "-3 dB",
            Share => "80 %",
            SquareMillimeters => "21 mm2",
            _ => "1 " + T.Units[0].Symbol,
        };

    /// <summary>A typical range.</summary>
    internal static string RangeExample<T>()
        where T : struct, IQuantity<T> => default(T) switch
        {
            Volts => "0.1 V to 5 V",
            Hertz => "80 Hz to 2500 Hz",
            _ => Example<T>(),
        };
}
