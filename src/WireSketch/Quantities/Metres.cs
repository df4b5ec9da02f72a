using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A length, in metres.</summary>
public readonly record struct Metres(double Value) : IQuantity<Metres>
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

    public static Metres From(double value) => new(value);

    public static Metres operator +(Metres a, Metres b) => new(a.Value + b.Value);

    public static Metres operator -(Metres a, Metres b) => new(a.Value - b.Value);

    public static Metres operator -(Metres a) => new(-a.Value);

    public static Metres operator *(Metres a, double times) => new(a.Value * times);

    public static Metres operator *(double times, Metres a) => new(a.Value * times);

    public static Metres operator /(Metres a, double by) => new(a.Value / by);

    public static double operator /(Metres a, Metres b) => a.Value / b.Value;

    public double Feet => Value / 0.3048;

    public double Inches => Value / 0.0254;

    public static Metres FromFeet(double feet) => new(feet * 0.3048);

    public static Metres FromInches(double inches) => new(inches * 0.0254);

    public static bool operator <(Metres a, Metres b) => a.Value < b.Value;

    public static bool operator >(Metres a, Metres b) => a.Value > b.Value;

    public static bool operator <=(Metres a, Metres b) => a.Value <= b.Value;

    public static bool operator >=(Metres a, Metres b) => a.Value >= b.Value;

    public int CompareTo(Metres other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
