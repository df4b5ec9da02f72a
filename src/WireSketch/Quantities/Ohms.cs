using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A resistance or the size of an impedance, in ohms.</summary>
public readonly record struct Ohms(double Value) : IQuantity<Ohms>
{
    public static string Noun => "a resistance";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("mohm", 1e-3, 0, "mΩ", "milliohm"),
        new("ohm", 1, 0, "Ω", "ohms"),
        new("kohm", 1e3, 0, "kΩ"),
    ];

    public static Ohms From(double value) => new(value);

    public static Ohms operator +(Ohms a, Ohms b) => new(a.Value + b.Value);

    public static Ohms operator -(Ohms a, Ohms b) => new(a.Value - b.Value);

    public static Ohms operator -(Ohms a) => new(-a.Value);

    public static Ohms operator *(Ohms a, double times) => new(a.Value * times);

    public static Ohms operator *(double times, Ohms a) => new(a.Value * times);

    public static Ohms operator /(Ohms a, double by) => new(a.Value / by);

    public static double operator /(Ohms a, Ohms b) => a.Value / b.Value;

    public static bool operator <(Ohms a, Ohms b) => a.Value < b.Value;

    public static bool operator >(Ohms a, Ohms b) => a.Value > b.Value;

    public static bool operator <=(Ohms a, Ohms b) => a.Value <= b.Value;

    public static bool operator >=(Ohms a, Ohms b) => a.Value >= b.Value;

    public int CompareTo(Ohms other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
