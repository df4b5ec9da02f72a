using System.Globalization;

namespace WireSketch.Drawing.Fonts;

/// <summary>
/// A length on paper in points, 1/72 inch, kept in whole hundredths so that lengths compare, add and print alike on every system.
/// </summary>
/// <param name="Hundredths">The length in hundredths of a point.</param>
public readonly record struct Points(int Hundredths) : IComparable<Points>
{
    public static Points Zero => default;

    /// <summary>The length in points.</summary>
    public double Value => Hundredths / 100.0;

    public static implicit operator Points(int whole) => new(whole * 100);

    /// <summary>Rounds to the nearest hundredth, halves away from zero.</summary>
    public static implicit operator Points(double points) => new((int)Math.Round(points * 100, MidpointRounding.AwayFromZero));

    public static Points operator +(Points a, Points b) => new(a.Hundredths + b.Hundredths);

    public static Points operator -(Points a, Points b) => new(a.Hundredths - b.Hundredths);

    public static Points operator -(Points a) => new(-a.Hundredths);

    public static Points operator *(Points a, int times) => new(a.Hundredths * times);

    public static Points operator *(Points a, double times) => new((int)Math.Round(a.Hundredths * times, MidpointRounding.AwayFromZero));

    public static Points operator /(Points a, int parts) =>
        new((int)Math.Round(a.Hundredths / (double)parts, MidpointRounding.AwayFromZero));

    public static bool operator <(Points a, Points b) => a.Hundredths < b.Hundredths;

    public static bool operator >(Points a, Points b) => a.Hundredths > b.Hundredths;

    public static bool operator <=(Points a, Points b) => a.Hundredths <= b.Hundredths;

    public static bool operator >=(Points a, Points b) => a.Hundredths >= b.Hundredths;

    public static Points Max(Points a, Points b) => a > b ? a : b;

    public static Points Min(Points a, Points b) => a < b ? a : b;

    public int CompareTo(Points other) => Hundredths.CompareTo(other.Hundredths);

    /// <summary>The number alone, with at most two decimals and no exponent.</summary>
    public override string ToString()
    {
        var sign = Hundredths < 0 ? "-" : "";
        var (whole, rest) = Math.DivRem(Math.Abs(Hundredths), 100);
        var text = string.Create(CultureInfo.InvariantCulture, $"{sign}{whole}");
        return rest == 0 ? text : string.Create(CultureInfo.InvariantCulture, $"{text}.{rest:00}").TrimEnd('0');
    }
}
