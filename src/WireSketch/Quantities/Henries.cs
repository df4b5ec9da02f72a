using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>An inductance, in henries.</summary>
public readonly record struct Henries(double Value) : IQuantity<Henries>
{
    public static string Noun => "an inductance";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("uH", 1e-6, 0, "µH", "μH"),
        new("mH", 1e-3, 0),
        new("H", 1, 0),
    ];

    public static Henries From(double value) => new(value);

    public static Henries operator +(Henries a, Henries b) => new(a.Value + b.Value);

    public static Henries operator -(Henries a, Henries b) => new(a.Value - b.Value);

    public static Henries operator -(Henries a) => new(-a.Value);

    public static Henries operator *(Henries a, double times) => new(a.Value * times);

    public static Henries operator *(double times, Henries a) => new(a.Value * times);

    public static Henries operator /(Henries a, double by) => new(a.Value / by);

    public static double operator /(Henries a, Henries b) => a.Value / b.Value;

    public static bool operator <(Henries a, Henries b) => a.Value < b.Value;

    public static bool operator >(Henries a, Henries b) => a.Value > b.Value;

    public static bool operator <=(Henries a, Henries b) => a.Value <= b.Value;

    public static bool operator >=(Henries a, Henries b) => a.Value >= b.Value;

    public int CompareTo(Henries other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
