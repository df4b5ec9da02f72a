using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A capacitance, in farads.</summary>
public readonly record struct Farads(double Value) : IQuantity<Farads>
{
    public static string Noun => "a capacitance";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("uF", 1e-6, 0, "µF", "μF"),
        new("F", 1, 0),
    ];

    public static Farads From(double value) => new(value);

    public static Farads operator +(Farads a, Farads b) => new(a.Value + b.Value);

    public static Farads operator -(Farads a, Farads b) => new(a.Value - b.Value);

    public static Farads operator -(Farads a) => new(-a.Value);

    public static Farads operator *(Farads a, double times) => new(a.Value * times);

    public static Farads operator *(double times, Farads a) => new(a.Value * times);

    public static Farads operator /(Farads a, double by) => new(a.Value / by);

    public static double operator /(Farads a, Farads b) => a.Value / b.Value;

    public static bool operator <(Farads a, Farads b) => a.Value < b.Value;

    public static bool operator >(Farads a, Farads b) => a.Value > b.Value;

    public static bool operator <=(Farads a, Farads b) => a.Value <= b.Value;

    public static bool operator >=(Farads a, Farads b) => a.Value >= b.Value;

    public int CompareTo(Farads other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
