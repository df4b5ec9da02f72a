using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A duration, in seconds.</summary>
public readonly record struct Seconds(double Value) : IQuantity<Seconds>
{
    public static string Noun => "a time";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("ms", 1e-3, 0),
        new("s", 1, 0),
        new("min", 60, 0),
        new("h", 3600, 0),
    ];

    public static Seconds From(double value) => new(value);

    public static Seconds operator +(Seconds a, Seconds b) => new(a.Value + b.Value);

    public static Seconds operator -(Seconds a, Seconds b) => new(a.Value - b.Value);

    public static Seconds operator -(Seconds a) => new(-a.Value);

    public static Seconds operator *(Seconds a, double times) => new(a.Value * times);

    public static Seconds operator *(double times, Seconds a) => new(a.Value * times);

    public static Seconds operator /(Seconds a, double by) => new(a.Value / by);

    public static double operator /(Seconds a, Seconds b) => a.Value / b.Value;

    public static bool operator <(Seconds a, Seconds b) => a.Value < b.Value;

    public static bool operator >(Seconds a, Seconds b) => a.Value > b.Value;

    public static bool operator <=(Seconds a, Seconds b) => a.Value <= b.Value;

    public static bool operator >=(Seconds a, Seconds b) => a.Value >= b.Value;

    public int CompareTo(Seconds other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
