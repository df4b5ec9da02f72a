using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>A unit that people write.</summary>
/// <param name="Symbol">As it is printed.</param>
/// <param name="Factor">Base units in one of it.</param>
/// <param name="Offset">Base units at its zero (only Fahrenheit has one).</param>
/// <param name="Also">Other ways to write it.</param>
public sealed record Unit(string Symbol, double Factor, double Offset = 0, params string[] Also);

/// <summary>A physical quantity: a number in a base unit that its type names.</summary>
public interface IQuantity<TSelf> : IComparable<TSelf>
    where TSelf : struct, IQuantity<TSelf>
{
    /// <summary>The number in the base unit.</summary>
    double Value { get; }

    /// <summary>What it is called in a message: "a voltage".</summary>
    static abstract string Noun { get; }

    /// <summary>The units people may write, the base unit among them.</summary>
    static abstract ImmutableArray<Unit> Units { get; }

    static abstract TSelf From(double value);
}

/// <summary>A value as the user wrote it: the number, the words, and the place.</summary>
public readonly record struct Written<T>(T Value, string Words, Text.SourceSpan At)
{
    public override string ToString() => Words;
}

/// <summary>A range such as <c>0.1 V to 5 V</c>.</summary>
public readonly record struct Range<T>(T Least, T Most);

/// <summary>A multiple such as <c>2 x 4 ohm</c>; a plain value counts once.</summary>
public readonly record struct Multiple<T>(int Count, T Each);
