using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Papers.Reports;

/// <summary>One chapter of the calculation report: how a kind of result is computed, and each result with what went into it.</summary>
/// <param name="Id">Stable name of the chapter.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Formulas">How it is computed, so that it can be followed by hand, each with its source.</param>
/// <param name="Results">In the order of the spec.</param>
public sealed record Chapter(string Id, string Title, ImmutableArray<string> Formulas, ImmutableArray<Calculation> Results);

/// <summary>What was computed about one thing.</summary>
/// <param name="Subject">What it is about: a conductor, device, channel or source.</param>
/// <param name="Inputs">What went in.</param>
/// <param name="Values">What came out.</param>
public sealed record Calculation(string Subject, ImmutableArray<Input> Inputs, ImmutableArray<Result> Values);

/// <summary>Something that a result was computed from.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Words">As it was written, or as it is printed.</param>
/// <param name="Value">Its number in base units; null where it is no number.</param>
/// <param name="Unit">Base unit of the number.</param>
/// <param name="Origin">Where it comes from: a line of the spec, a part's file, a table, or a default with what that rests on.</param>
public sealed record Input(string Name, string Words, double? Value, string? Unit, string Origin)
{
    /// <summary>What was written in the spec or in a file it uses; else a default.</summary>
    internal static Input Of<T>(Spec spec, string name, Written<T>? written, T otherwise, string basis)
        where T : struct, IQuantity<T> => written is { } w
        ? new(name, w.Words, w.Value.Value, BaseUnit<T>(), Place(spec, w.At))
        : Default(name, otherwise, basis);

    /// <summary>What was written in the spec or in a file it uses.</summary>
    internal static Input Of<T>(Spec spec, string name, Written<T> written)
        where T : struct, IQuantity<T> => new(name, written.Words, written.Value.Value, BaseUnit<T>(), Place(spec, written.At));

    internal static Input Default<T>(string name, T value, string basis)
        where T : struct, IQuantity<T> => new(name, Quantity.Print(value), value.Value, BaseUnit<T>(), $"default: {basis}");

    internal static Input Computed<T>(string name, T value, string chapter)
        where T : struct, IQuantity<T> => new(name, Quantity.Print(value, 4), value.Value, BaseUnit<T>(), $"computed: {chapter}");

    internal static string BaseUnit<T>()
        where T : struct, IQuantity<T> => T.Units.FirstOrDefault(u => u.Factor == 1 && u.Offset == 0)?.Symbol ?? "share";

    internal static string Place(Spec spec, Span at) => ReferenceEquals(at.File, spec.File)
        ? string.Create(System.Globalization.CultureInfo.InvariantCulture, $"line {at.Line}")
        : string.Create(System.Globalization.CultureInfo.InvariantCulture, $"{at.File.Name} line {at.Line}");
}

/// <summary>A computed value.</summary>
/// <param name="Name">What it is.</param>
/// <param name="Words">As it is printed.</param>
/// <param name="Value">Its number in base units; null where it is no number or has none.</param>
/// <param name="Unit">Base unit of the number.</param>
public sealed record Result(string Name, string Words, double? Value, string? Unit)
{
    internal static Result Of<T>(string name, T value)
        where T : struct, IQuantity<T> => new(name, Quantity.Print(value, 4), value.Value, Input.BaseUnit<T>());

    internal static Result Of<T>(string name, T? value)
        where T : struct, IQuantity<T> => value is { } v ? Of(name, v) : new(name, "unknown", null, Input.BaseUnit<T>());

    internal static Result Said(string name, string words) => new(name, words, null, null);
}
