using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A frequency, in hertz.</summary>
public readonly record struct Hertz(double Value) : IQuantity<Hertz>
{
    public static string Noun => "a frequency";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("Hz", 1, 0),
        new("kHz", 1e3, 0),
    ];

    public static Hertz From(double value) => new(value);

    public static Hertz operator +(Hertz a, Hertz b) => new(a.Value + b.Value);

    public static Hertz operator -(Hertz a, Hertz b) => new(a.Value - b.Value);

    public static Hertz operator -(Hertz a) => new(-a.Value);

    public static Hertz operator *(Hertz a, double times) => new(a.Value * times);

    public static Hertz operator *(double times, Hertz a) => new(a.Value * times);

    public static Hertz operator /(Hertz a, double by) => new(a.Value / by);

    public static double operator /(Hertz a, Hertz b) => a.Value / b.Value;

    public static bool operator <(Hertz a, Hertz b) => a.Value < b.Value;

    public static bool operator >(Hertz a, Hertz b) => a.Value > b.Value;

    public static bool operator <=(Hertz a, Hertz b) => a.Value <= b.Value;

    public static bool operator >=(Hertz a, Hertz b) => a.Value >= b.Value;

    public int CompareTo(Hertz other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
