using System.Globalization;

namespace WireSketch.Quantities;

/// <summary>
/// The only door to powers, logarithms, roots and circular functions. IEEE 754 leaves their last digit to the C runtime of each system
/// (x64 and arm64 differ in that of the cube root of 7, for instance), so what comes back here is rounded to 13 significant digits: the
/// same bytes everywhere. A square root is exact by IEEE 754 and needs no door.
/// </summary>
internal static class Exact
{
    /// <summary>Three digits fewer than a double holds; no runtime is off by so much.</summary>
    private const string Format = "E12";

#pragma warning disable RS0030 // This is the door.
    public static double Pow(double value, double exponent) => Round(Math.Pow(value, exponent));

    public static double Exp(double value) => Round(Math.Exp(value));

    public static double Log(double value) => Round(Math.Log(value));

    public static double Log2(double value) => Round(Math.Log2(value));

    public static double Log10(double value) => Round(Math.Log10(value));

    public static double Cbrt(double value) => Round(Math.Cbrt(value));

    public static double Sin(double radians) => Round(Math.Sin(radians));

    public static double Cos(double radians) => Round(Math.Cos(radians));

    public static double Tan(double radians) => Round(Math.Tan(radians));

    public static double Atan2(double y, double x) => Round(Math.Atan2(y, x));
#pragma warning restore RS0030

    private static double Round(double value)
    {
        if (!double.IsFinite(value))
        {
            return value;
        }

        Span<char> digits = stackalloc char[32];
        value.TryFormat(digits, out var length, Format, CultureInfo.InvariantCulture);
        return double.Parse(digits[..length], NumberStyles.Float, CultureInfo.InvariantCulture);
    }
}
