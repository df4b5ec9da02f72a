using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A level difference, in decibels.</summary>
public readonly record struct Decibels(double Value) : IQuantity<Decibels>
{
    public static string Noun => "a level";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("dB", 1, 0),
    ];

    public static Decibels From(double value) => new(value);

    public static Decibels operator +(Decibels a, Decibels b) => new(a.Value + b.Value);

    public static Decibels operator -(Decibels a, Decibels b) => new(a.Value - b.Value);

    public static Decibels operator -(Decibels a) => new(-a.Value);

    public static Decibels operator *(Decibels a, double times) => new(a.Value * times);

    public static Decibels operator *(double times, Decibels a) => new(a.Value * times);

    public static Decibels operator /(Decibels a, double by) => new(a.Value / by);

    public static double operator /(Decibels a, Decibels b) => a.Value / b.Value;

    /// <summary>The ratio of two powers that this level difference stands for: 10^(dB/10).</summary>
    public double PowerRatio => Exact.Pow(10, Value / 10);

    /// <summary>The ratio of two voltages that this level difference stands for: 10^(dB/20).</summary>
    public double VoltageRatio => Exact.Pow(10, Value / 20);

    public static Decibels FromPowerRatio(double ratio) => new(10 * Exact.Log10(ratio));

    public static Decibels FromVoltageRatio(double ratio) => new(20 * Exact.Log10(ratio));

    public static bool operator <(Decibels a, Decibels b) => a.Value < b.Value;

    public static bool operator >(Decibels a, Decibels b) => a.Value > b.Value;

    public static bool operator <=(Decibels a, Decibels b) => a.Value <= b.Value;

    public static bool operator >=(Decibels a, Decibels b) => a.Value >= b.Value;

    public int CompareTo(Decibels other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
