using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>An electric charge, in ampere-hours.</summary>
public readonly record struct AmpHours(double Value) : IQuantity<AmpHours>
{
    public static string Noun => "a charge";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("Ah", 1, 0),
    ];

    public static AmpHours From(double value) => new(value);

    public static AmpHours operator +(AmpHours a, AmpHours b) => new(a.Value + b.Value);

    public static AmpHours operator -(AmpHours a, AmpHours b) => new(a.Value - b.Value);

    public static AmpHours operator -(AmpHours a) => new(-a.Value);

    public static AmpHours operator *(AmpHours a, double times) => new(a.Value * times);

    public static AmpHours operator *(double times, AmpHours a) => new(a.Value * times);

    public static AmpHours operator /(AmpHours a, double by) => new(a.Value / by);

    public static double operator /(AmpHours a, AmpHours b) => a.Value / b.Value;

    public static bool operator <(AmpHours a, AmpHours b) => a.Value < b.Value;

    public static bool operator >(AmpHours a, AmpHours b) => a.Value > b.Value;

    public static bool operator <=(AmpHours a, AmpHours b) => a.Value <= b.Value;

    public static bool operator >=(AmpHours a, AmpHours b) => a.Value >= b.Value;

    public int CompareTo(AmpHours other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
