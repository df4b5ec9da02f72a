using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A cross-section, in square millimeters.</summary>
public readonly record struct SquareMillimeters(double Value) : IQuantity<SquareMillimeters>
{
    public static string Noun => "a cross-section";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("mm2", 1, 0, "mm²", "mm^2"),
    ];

    public static SquareMillimeters From(double value) => new(value);

    public static SquareMillimeters operator +(SquareMillimeters a, SquareMillimeters b) => new(a.Value + b.Value);

    public static SquareMillimeters operator -(SquareMillimeters a, SquareMillimeters b) => new(a.Value - b.Value);

    public static SquareMillimeters operator -(SquareMillimeters a) => new(-a.Value);

    public static SquareMillimeters operator *(SquareMillimeters a, double times) => new(a.Value * times);

    public static SquareMillimeters operator *(double times, SquareMillimeters a) => new(a.Value * times);

    public static SquareMillimeters operator /(SquareMillimeters a, double by) => new(a.Value / by);

    public static double operator /(SquareMillimeters a, SquareMillimeters b) => a.Value / b.Value;

    public static bool operator <(SquareMillimeters a, SquareMillimeters b) => a.Value < b.Value;

    public static bool operator >(SquareMillimeters a, SquareMillimeters b) => a.Value > b.Value;

    public static bool operator <=(SquareMillimeters a, SquareMillimeters b) => a.Value <= b.Value;

    public static bool operator >=(SquareMillimeters a, SquareMillimeters b) => a.Value >= b.Value;

    public int CompareTo(SquareMillimeters other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
