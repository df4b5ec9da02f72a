using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A power, in watts.</summary>
public readonly record struct Watts(double Value) : IQuantity<Watts>
{
    public static string Noun => "a power";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("W", 1, 0, "watt", "watts"),
        new("kW", 1e3, 0),
    ];

    public static Watts From(double value) => new(value);

    public static Watts operator +(Watts a, Watts b) => new(a.Value + b.Value);

    public static Watts operator -(Watts a, Watts b) => new(a.Value - b.Value);

    public static Watts operator -(Watts a) => new(-a.Value);

    public static Watts operator *(Watts a, double times) => new(a.Value * times);

    public static Watts operator *(double times, Watts a) => new(a.Value * times);

    public static Watts operator /(Watts a, double by) => new(a.Value / by);

    public static double operator /(Watts a, Watts b) => a.Value / b.Value;

    public static Amps operator /(Watts power, Volts volts) => new(power.Value / volts.Value);

    public static bool operator <(Watts a, Watts b) => a.Value < b.Value;

    public static bool operator >(Watts a, Watts b) => a.Value > b.Value;

    public static bool operator <=(Watts a, Watts b) => a.Value <= b.Value;

    public static bool operator >=(Watts a, Watts b) => a.Value >= b.Value;

    public int CompareTo(Watts other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
