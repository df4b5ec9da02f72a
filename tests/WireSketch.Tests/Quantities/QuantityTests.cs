using System.Globalization;
using CsCheck;
using WireSketch.Quantities;

namespace WireSketch.Tests.Quantities;

public sealed class QuantityTests
{
    /// <summary>
    /// Factors to the base unit: the prefixes and units of the SI Brochure; inch, foot and degree Fahrenheit from NIST SP 811
    /// (2008), appendix B.8, where 1 in = 2.54 E-02 m and 1 ft = 3.048 E-01 m are exact and t/°C = (t/°F − 32)/1.8.
    /// </summary>
    [Theory]
    [InlineData("1 in", 0.0254)]
    [InlineData("1 ft", 0.3048)]
    [InlineData("12 in", 0.3048)]
    [InlineData("1 cm", 0.01)]
    [InlineData("1 mm", 0.001)]
    [InlineData("17'", 5.1816)]
    [InlineData("14\"", 0.3556)]
    public void Lengths_follow_the_published_factors(string words, double meters) =>
        Assert.Equal(meters, Read<Meters>(words).Value, 1e-15 * 10);

    /// <summary>1 ft = 12 in = 0.3048 m exactly (NIST SP 811, appendix B.8).</summary>
    [Theory]
    [InlineData("13 ft 3 in", 4.0386)]
    [InlineData("15 ft 6 in", 4.7244)]
    [InlineData("1 ft 2.5 in", 0.3683)]
    [InlineData("15'6\"", 4.7244)]
    [InlineData("15' 6 1/2\"", 4.7371)]
    [InlineData("15 1/2 ft", 4.7244)]
    [InlineData("3/8 in", 0.009525)]
    [InlineData("2 feet 11 inches", 0.889)]
    public void Lengths_are_read_as_a_tape_shows_them(string words, double meters) => Assert.Equal(meters, Read<Meters>(words).Value);

    [Theory]
    [InlineData("15 ft 12 in", "less than 12 in")]
    [InlineData("1 1/0 ft", "into 0")]
    [InlineData("-1 ft 3 in", "is not a unit")]
    [InlineData("3 in 1 ft", "is not a unit")]
    [InlineData("15 ft 6", "is not a unit")]
    [InlineData("15,5 ft", "comma")]
    [InlineData("2e9 ft", "exponent")]
    public void What_is_no_length_is_refused_with_a_word_on_why(string words, string why)
    {
        Assert.False(Quantity.TryRead<Meters>(words, out _, out var trouble));
        Assert.Contains(why, trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void Only_lengths_have_feet_and_fractions() => Assert.False(Quantity.TryRead<Volts>("1/2 V", out _, out _));

    [Theory]
    [InlineData("32 F", 0)]
    [InlineData("212 F", 100)]
    [InlineData("-40 F", -40)]
    [InlineData("221 °F", 105)]
    public void Degrees_fahrenheit_follow_the_published_formula(string words, double celsius) =>
        Assert.Equal(celsius, Read<Celsius>(words).Value, 1e-12);

    [Fact]
    public void Prefixes_are_those_of_the_SI()
    {
        Assert.Equal(0.003, Read<Amps>("3 mA").Value, 1e-15);
        Assert.Equal(0.025, Read<Ohms>("25 mohm").Value, 1e-15);
        Assert.Equal(1500, Read<Ohms>("1.5 kohm").Value, 1e-9);
        Assert.Equal(2000, Read<Watts>("2 kW").Value, 1e-9);
        Assert.Equal(0.00022, Read<Farads>("220 uF").Value, 1e-15);
        Assert.Equal(0.0005, Read<Henries>("0.5 mH").Value, 1e-15);
        Assert.Equal(5400, Read<Seconds>("1.5 h").Value, 1e-9);
        Assert.Equal(0.8, Read<Share>("80 %").Value, 1e-15);
    }

    /// <summary>In binary, 70 × 0.01 is not 0.7, and 0.1 × 0.001 is not 0.0001.</summary>
    [Fact]
    public void What_is_written_is_the_number_nearest_to_it()
    {
        Assert.Equal(0.7, Read<Share>("70 %").Value);
        Assert.Equal(0.0001, Read<Ohms>("0.1 mohm").Value);
        Assert.Equal(5.1816, Read<Meters>("17 ft").Value);
        Assert.Equal(0.2032, Read<Meters>("8 in").Value);
    }

    [Fact]
    public void Volts_are_printed_and_read_back() => PrintsAndReadsBack<Volts>();

    [Fact]
    public void Amps_are_printed_and_read_back() => PrintsAndReadsBack<Amps>();

    [Fact]
    public void Ohms_are_printed_and_read_back() => PrintsAndReadsBack<Ohms>();

    [Fact]
    public void Watts_are_printed_and_read_back() => PrintsAndReadsBack<Watts>();

    [Fact]
    public void Meters_are_printed_and_read_back() => PrintsAndReadsBack<Meters>();

    [Fact]
    public void Square_millimeters_are_printed_and_read_back() => PrintsAndReadsBack<SquareMillimeters>();

    [Fact]
    public void Hertz_are_printed_and_read_back() => PrintsAndReadsBack<Hertz>();

    [Fact]
    public void Decibels_are_printed_and_read_back() => PrintsAndReadsBack<Decibels>();

    [Fact]
    public void Farads_are_printed_and_read_back() => PrintsAndReadsBack<Farads>();

    [Fact]
    public void Henries_are_printed_and_read_back() => PrintsAndReadsBack<Henries>();

    [Fact]
    public void Seconds_are_printed_and_read_back() => PrintsAndReadsBack<Seconds>();

    [Fact]
    public void Amp_hours_are_printed_and_read_back() => PrintsAndReadsBack<AmpHours>();

    [Fact]
    public void Degrees_are_printed_and_read_back() => PrintsAndReadsBack<Celsius>();

    [Fact]
    public void Shares_are_printed_and_read_back() => PrintsAndReadsBack<Share>();

    [Theory]
    [InlineData("60", "has no unit")]
    [InlineData("60 V", "\"V\" is not a unit of current: mA or A would fit")]
    [InlineData("sixty A", "is not a current")]
    [InlineData("", "is not a current")]
    [InlineData("A", "is not a current")]
    [InlineData("1e3 A", "is written with an exponent")]
    [InlineData("60 A x", "is not a unit of current")]
    public void What_is_wrong_is_said_with_the_units_that_fit(string words, string says)
    {
        Assert.False(Quantity.TryRead<Amps>(words, out _, out var trouble));
        Assert.Contains(says, trouble, StringComparison.Ordinal);
    }

    [Fact]
    public void A_number_without_end_is_refused() =>
        Assert.False(Quantity.TryRead<Volts>(new string('9', 400) + " V", out _, out _));

    [Theory]
    [InlineData(0, 3, "0")]
    [InlineData(1234.5, 3, "1235")]
    [InlineData(0.0123456, 3, "0.0123")]
    [InlineData(12.60, 3, "12.6")]
    [InlineData(-2.345, 3, "-2.35")]
    [InlineData(9.999, 3, "10")]
    public void Digits_are_significant_and_never_an_exponent(double number, int digits, string text) =>
        Assert.Equal(text, Quantity.Digits(number, digits));

    /// <summary>No culture of the machine reaches a number.</summary>
    [Fact]
    public void Any_text_is_read_or_refused_without_a_fault() => Gen.String.Sample(text =>
    {
        var read = Quantity.TryRead<Volts>(text, out var value, out var trouble);
        Assert.True(read ? double.IsFinite(value.Value) && trouble.Length == 0 : trouble.Length > 0);
    });

    /// <summary>
    /// Printed to fifteen digits in each of its units, a value reads back as itself; printed as people see it, to half its last digit.
    /// </summary>
    private static void PrintsAndReadsBack<T>()
        where T : struct, IQuantity<T>
    {
        Assert.Contains(T.Units, u => u is { Factor: 1, Offset: 0 } || typeof(T) == typeof(Share));
        (from digits in Gen.Int[-99_999, 99_999] from power in Gen.Int[-3, 3] select digits * Math.Pow(10, power)).Sample(number =>
        {
            var value = T.From(number);
            foreach (var unit in T.Units)
            {
                var words = Quantity.PrintIn(value, unit, 15);
                Assert.Equal(
                    number,
                    Read<T>(words).Value,
                    (Math.Abs(number) * 1e-12) + (1e-12 * unit.Factor) + (Math.Abs(unit.Offset) * 1e-12));
                foreach (var also in unit.Also)
                {
                    Assert.Equal(Read<T>(words), Read<T>(words.Replace(unit.Symbol, also, StringComparison.Ordinal)));
                }
            }

            var shown = Read<T>(Quantity.Print(value)).Value;
            Assert.True(
                Math.Abs(shown - number) <= (Math.Abs(number) * 0.005) + 1e-12,
                $"{Quantity.Print(value)} stands for {number.ToString(CultureInfo.InvariantCulture)}");
        });
    }

    private static T Read<T>(string words)
        where T : struct, IQuantity<T>
    {
        Assert.True(Quantity.TryRead<T>(words, out var value, out var trouble), trouble);
        return value;
    }
}
