using WireSketch.Quantities;

namespace WireSketch.Diagnostics;

/// <summary>The part that a value plays in a finding.</summary>
public enum ValueRole
{
    /// <summary>It stands by the way.</summary>
    Other,

    /// <summary>What was found, to be held against the limit.</summary>
    Measured,

    /// <summary>What the measured value is held against.</summary>
    Limit,
}

/// <summary>A value that a finding rests on or names.</summary>
/// <param name="Role">The part it plays.</param>
/// <param name="Value">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The base unit of the quantity: A, V, ohm, W, m, s, Hz, dB, C, Ah, F, H, mm2; 1 for a share; empty for a
/// count.</param>
/// <param name="Text">As the sentence prints it, in the unit that reads best.</param>
public sealed record FindingValue(ValueRole Role, double Value, string Unit, string Text)
{
    /// <summary>What it is, where role and unit do not say it; null if none was given.</summary>
    public string? Name { get; init; }
}

/// <summary>A quantity with the words in which it is to be printed, such as a length in the units of the file.</summary>
/// <param name="Value">The number, in <paramref name="Unit"/>.</param>
/// <param name="Unit">The base unit of the quantity.</param>
/// <param name="Text">The words.</param>
public readonly record struct PrintedValue(double Value, string Unit, string Text)
{
    /// <summary>A quantity in words of one's choice.</summary>
    public static PrintedValue Of<T>(T quantity, string words)
        where T : struct, IQuantity<T> => new(quantity.Value, Quantity.BaseUnit<T>(), words);

    /// <summary>A number of a unit that has no type of its own.</summary>
    public static PrintedValue Of(double value, string unit, string words) => new(value, unit, words);

    /// <summary>A size of wire, by its area.</summary>
    public static PrintedValue Of(WireSize size, string words) => Of(size.Area, words);

    public override string ToString() => Text;
}

/// <summary>A state of the system as a finding names it.</summary>
/// <param name="Word">As the language writes it: <c>full output</c>.</param>
/// <param name="Phrase">As part of a sentence: <c>at full output</c>.</param>
public readonly record struct StatePhrase(string Word, string Phrase)
{
    public override string ToString() => Phrase;
}

/// <summary>A size that a finding asks for.</summary>
/// <param name="Run">Id of the run.</param>
/// <param name="Size">The size.</param>
public sealed record WantedSize(string Run, WireSize Size)
{
    public override string ToString() => $"{Run} {Size}";
}
