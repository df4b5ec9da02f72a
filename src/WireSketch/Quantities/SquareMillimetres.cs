using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A cross-section, in square millimetres.</summary>
public readonly record struct SquareMillimetres(double Value) : IQuantity<SquareMillimetres>
{
    public static string Noun => "a cross-section";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("mm2", 1, 0, "mm²", "mm^2"),
    ];

    public static SquareMillimetres From(double value) => new(value);

    public static SquareMillimetres operator +(SquareMillimetres a, SquareMillimetres b) => new(a.Value + b.Value);

    public static SquareMillimetres operator -(SquareMillimetres a, SquareMillimetres b) => new(a.Value - b.Value);

    public static SquareMillimetres operator -(SquareMillimetres a) => new(-a.Value);

    public static SquareMillimetres operator *(SquareMillimetres a, double times) => new(a.Value * times);

    public static SquareMillimetres operator *(double times, SquareMillimetres a) => new(a.Value * times);

    public static SquareMillimetres operator /(SquareMillimetres a, double by) => new(a.Value / by);

    public static double operator /(SquareMillimetres a, SquareMillimetres b) => a.Value / b.Value;

    public static bool operator <(SquareMillimetres a, SquareMillimetres b) => a.Value < b.Value;

    public static bool operator >(SquareMillimetres a, SquareMillimetres b) => a.Value > b.Value;

    public static bool operator <=(SquareMillimetres a, SquareMillimetres b) => a.Value <= b.Value;

    public static bool operator >=(SquareMillimetres a, SquareMillimetres b) => a.Value >= b.Value;

    public int CompareTo(SquareMillimetres other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
