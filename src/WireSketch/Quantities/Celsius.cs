using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A temperature, in degrees Celsius.</summary>
public readonly record struct Celsius(double Value) : IQuantity<Celsius>
{
    public static string Noun => "a temperature";

    public static ImmutableArray<Unit> Units { get; } =
    [
        new("C", 1, 0, "°C"),
        new("F", 5.0 / 9, -160.0 / 9, "°F"),
    ];

    public static Celsius From(double value) => new(value);

    /// <summary>A temperature warmer by a number of kelvins.</summary>
    public Celsius Warmer(double kelvins) => new(Value + kelvins);

    public static bool operator <(Celsius a, Celsius b) => a.Value < b.Value;

    public static bool operator >(Celsius a, Celsius b) => a.Value > b.Value;

    public static bool operator <=(Celsius a, Celsius b) => a.Value <= b.Value;

    public static bool operator >=(Celsius a, Celsius b) => a.Value >= b.Value;

    public int CompareTo(Celsius other) => Value.CompareTo(other.Value);

    public override string ToString() => Quantity.Print(this);
}
