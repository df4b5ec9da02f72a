using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>A value that is taken where the spec is silent, with its words and what it rests on.</summary>
/// <param name="Value">The value.</param>
/// <param name="Words">The value as the keys page, the papers and the drawing print it.</param>
/// <param name="Basis">Its source, or that it is common practice.</param>
public sealed record Assumption<T>(T Value, string Words, string Basis)
{
    /// <summary>The words with the basis, for the keys page and the report: 25 A (common practice).</summary>
    public override string ToString() => $"{Words} ({Basis})";
}

/// <summary>Makes assumptions.</summary>
internal static class Assumption
{
    /// <summary>A fact of the trade without a published source.</summary>
    public const string CommonPractice = "common practice";

    /// <summary>Words are the value, printed.</summary>
    public static Assumption<T> Of<T>(T value, string basis = CommonPractice)
        where T : struct, IQuantity<T> => new(value, Quantity.Print(value), basis);

    /// <summary>Words say more than the value alone.</summary>
    public static Assumption<T> Of<T>(T value, string words, string basis) => new(value, words, basis);
}
