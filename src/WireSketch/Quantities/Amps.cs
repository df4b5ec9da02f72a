using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>An electric current, in amperes.</summary>
public readonly record struct Amps(double Value) : IQuantity<Amps>
{
    public static string Noun => "a current";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("mA", 1e-3, 0),
        new("A", 1, 0, "amp", "amps"),
    ];

    public static Amps From(double value) => new(value);

    public static Amps operator +(Amps a, Amps b) => new(a.Value + b.Value);

    public static Amps operator -(Amps a, Amps b) => new(a.Value - b.Value);

    public static Amps operator -(Amps a) => new(-a.Value);

    public static Amps operator *(Amps a, double times) => new(a.Value * times);

    public static Amps operator *(double times, Amps a) => new(a.Value * times);

    public static Amps operator /(Amps a, double by) => new(a.Value / by);

    public static double operator /(Amps a, Amps b) => a.Value / b.Value;

    public static Volts operator *(Amps amps, Ohms ohms) => new(amps.Value * ohms.Value);

    public static bool operator <(Amps a, Amps b) => a.Value < b.Value;

    public static bool operator >(Amps a, Amps b) => a.Value > b.Value;

    public static bool operator <=(Amps a, Amps b) => a.Value <= b.Value;

    public static bool operator >=(Amps a, Amps b) => a.Value >= b.Value;

    public int CompareTo(Amps other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
