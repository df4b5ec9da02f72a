using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A share of a whole; 1 is all of it.</summary>
public readonly record struct Share(double Value) : IQuantity<Share>
{
    public static string Noun => "a share";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("%", 1e-2, 0),
    ];

    public static Share From(double value) => new(value);

    public static Share operator +(Share a, Share b) => new(a.Value + b.Value);

    public static Share operator -(Share a, Share b) => new(a.Value - b.Value);

    public static Share operator -(Share a) => new(-a.Value);

    public static Share operator *(Share a, double times) => new(a.Value * times);

    public static Share operator *(double times, Share a) => new(a.Value * times);

    public static Share operator /(Share a, double by) => new(a.Value / by);

    public static double operator /(Share a, Share b) => a.Value / b.Value;

    public double Percent => Value * 100;

    public static Share FromPercent(double percent) => new(percent / 100);

    public static bool operator <(Share a, Share b) => a.Value < b.Value;

    public static bool operator >(Share a, Share b) => a.Value > b.Value;

    public static bool operator <=(Share a, Share b) => a.Value <= b.Value;

    public static bool operator >=(Share a, Share b) => a.Value >= b.Value;

    public int CompareTo(Share other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
