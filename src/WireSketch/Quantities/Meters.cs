using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A length, in meters.</summary>
public readonly record struct Meters(double Value) : IQuantity<Meters>
{
    public static string Noun => "a length";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("mm", 1e-3, 0),
        new("cm", 1e-2, 0),
        new("m", 1, 0),
        new("in", 0.0254, 0, "\"", "inch", "inches"),
        new("ft", 0.3048, 0, "'", "foot", "feet"),
    ];

    public static Meters From(double value) => new(value);

    public static Meters operator +(Meters a, Meters b) => new(a.Value + b.Value);

    public static Meters operator -(Meters a, Meters b) => new(a.Value - b.Value);

    public static Meters operator -(Meters a) => new(-a.Value);

    public static Meters operator *(Meters a, double times) => new(a.Value * times);

    public static Meters operator *(double times, Meters a) => new(a.Value * times);

    public static Meters operator /(Meters a, double by) => new(a.Value / by);

    public static double operator /(Meters a, Meters b) => a.Value / b.Value;

    public double Feet => Value / 0.3048;

    public double Inches => Value / 0.0254;

    public static Meters FromFeet(double feet) => new(feet * 0.3048);

    public static Meters FromInches(double inches) => new(inches * 0.0254);

    public static bool operator <(Meters a, Meters b) => a.Value < b.Value;

    public static bool operator >(Meters a, Meters b) => a.Value > b.Value;

    public static bool operator <=(Meters a, Meters b) => a.Value <= b.Value;

    public static bool operator >=(Meters a, Meters b) => a.Value >= b.Value;

    public int CompareTo(Meters other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
