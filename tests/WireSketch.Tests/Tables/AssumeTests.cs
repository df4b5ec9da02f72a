using System.Globalization;
using System.Reflection;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Testing;

namespace WireSketch.Tests.Tables;

/// <summary>Every default, its value, its words and its basis, as committed.</summary>
public sealed class AssumeTests
{
    private static readonly (string Name, object Assumption)[] All =
        [.. typeof(Assume).GetProperties(BindingFlags.Static | BindingFlags.Public).Select(p => (p.Name, p.GetValue(null)!))];

    [Fact]
    public void Every_default_is_the_committed_one() => Baseline.Match(
        "tests/WireSketch.Tests/Tables/assumptions.txt",
        string.Concat(All.Select(a =>
            $"{a.Name} | {ValueOf(a.Assumption)} | {Of(a.Assumption, "Words")} | {Of(a.Assumption, "Basis")}\n")));

    /// <summary>Words that are a quantity say the value.</summary>
    [Fact]
    public void Words_say_the_value()
    {
        Assert.True(All.Length >= 45, $"{All.Length}");
        foreach (var (name, assumption) in All)
        {
            switch (assumption)
            {
                case Assumption<Volts> a: Says(name, a); break;
                case Assumption<Amps> a: Says(name, a); break;
                case Assumption<Celsius> a: Says(name, a); break;
                case Assumption<Ohms> a when name != nameof(Assume.Internal): Says(name, a); break;
                case Assumption<WireSize> a: Assert.Equal(a.Words, a.Value.ToString()); break;
                default: Assert.NotEqual("", Of(assumption, "Words")); break;
            }

            Assert.NotEqual("", Of(assumption, "Basis"));
        }
    }

    private static void Says<T>(string name, Assumption<T> a)
        where T : struct, IQuantity<T>
    {
        Assert.True(Quantity.TryRead<T>(a.Words, out var value, out var trouble), $"{name}: {trouble}");
        Assert.Equal(value.Value, a.Value.Value, 12);
    }

    /// <summary>In the quantity's own unit.</summary>
    private static string ValueOf(object assumption) => assumption.GetType().GetProperty("Value")!.GetValue(assumption) switch
    {
        double number => number.ToString("R", CultureInfo.InvariantCulture),
        WireSize size => size.Area.Value.ToString("R", CultureInfo.InvariantCulture) + " mm2",
        { } quantity =>
            Convert.ToDouble(quantity.GetType().GetProperty("Value")!.GetValue(quantity), CultureInfo.InvariantCulture)
                .ToString("R", CultureInfo.InvariantCulture),
        null => "",
    };

    private static string Of(object assumption, string property) =>
        (string)assumption.GetType().GetProperty(property)!.GetValue(assumption)!;
}
