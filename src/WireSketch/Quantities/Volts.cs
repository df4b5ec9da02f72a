using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>An electric potential difference, in volts.</summary>
public readonly record struct Volts(double Value) : IQuantity<Volts>
{
    public static string Noun => "a voltage";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("mV", 1e-3, 0),
        new("V", 1, 0, "volt", "volts"),
    ];

    public static Volts From(double value) => new(value);

    public static Volts operator +(Volts a, Volts b) => new(a.Value + b.Value);

    public static Volts operator -(Volts a, Volts b) => new(a.Value - b.Value);

    public static Volts operator -(Volts a) => new(-a.Value);

    public static Volts operator *(Volts a, double times) => new(a.Value * times);

    public static Volts operator *(double times, Volts a) => new(a.Value * times);

    public static Volts operator /(Volts a, double by) => new(a.Value / by);

    public static double operator /(Volts a, Volts b) => a.Value / b.Value;

    public static Watts operator *(Volts volts, Amps amps) => new(volts.Value * amps.Value);

    public static Watts operator *(Amps amps, Volts volts) => new(volts.Value * amps.Value);

    public static Amps operator /(Volts volts, Ohms ohms) => new(volts.Value / ohms.Value);

    public static Ohms operator /(Volts volts, Amps amps) => new(volts.Value / amps.Value);

    public static bool operator <(Volts a, Volts b) => a.Value < b.Value;

    public static bool operator >(Volts a, Volts b) => a.Value > b.Value;

    public static bool operator <=(Volts a, Volts b) => a.Value <= b.Value;

    public static bool operator >=(Volts a, Volts b) => a.Value >= b.Value;

    public int CompareTo(Volts other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
