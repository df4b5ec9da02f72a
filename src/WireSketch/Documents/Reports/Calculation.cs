using System.Collections.Immutable;

namespace WireSketch.Documents.Reports;

/// <summary>One chapter of the calculation report: how a kind of result is computed, and each result with what went into it.</summary>
/// <param name="Id">Stable name of the chapter.</param>
/// <param name="Title">Its heading.</param>
/// <param name="Method">How it is computed, in words, with the texts that it rests on.</param>
/// <param name="Constants">What goes into all of its results alike.</param>
/// <param name="Results">In the order of the spec.</param>
public sealed record Chapter(
    string Id,
    string Title,
    ImmutableArray<string> Method,
    ImmutableArray<CalculationInput> Constants,
    ImmutableArray<Calculation> Results);

/// <summary>What was computed about one thing.</summary>
/// <param name="Subject">What it is about: a conductor, device, channel or source; several where all of it is the same.</param>
/// <param name="Inputs">What went in.</param>
/// <param name="Values">What came out; a later one may rest on an earlier one.</param>
public sealed record Calculation(string Subject, ImmutableArray<CalculationInput> Inputs, ImmutableArray<Result> Values);

/// <summary>Something that a result was computed from.</summary>
/// <param name="Symbol">What it is called in a formula; empty where none uses it.</param>
/// <param name="Name">What it is.</param>
/// <param name="Words">As it was written, or as it is printed.</param>
/// <param name="Value">Its number in base units; null where it is no number.</param>
/// <param name="Unit">Base unit of the number.</param>
/// <param name="Origin">Where it comes from: a line of a file, a table, another chapter, or a default with what that rests on.</param>
/// <param name="Terms">What a sum is made of; null for a single value.</param>
public sealed record CalculationInput(
    string Symbol, string Name, string Words, double? Value, string? Unit, string Origin, ImmutableArray<Term>? Terms = null);

/// <summary>One term of a sum.</summary>
/// <param name="Of">What it belongs to.</param>
/// <param name="Words">As it is printed.</param>
/// <param name="Value">Its number in base units.</param>
public sealed record Term(string Of, string Words, double Value);

/// <summary>A computed value.</summary>
/// <param name="Symbol">What it is called in formulas; empty where it is told in words.</param>
/// <param name="Name">What it is.</param>
/// <param name="Words">As it is printed.</param>
/// <param name="Value">Its number in base units; null where it is no number or is not known.</param>
/// <param name="Unit">Base unit of the number.</param>
/// <param name="Formula">How it follows from the constants, the inputs and the results before it; null where no short formula says
/// it.</param>
/// <param name="By">How it was found where there is no formula.</param>
public sealed record Result(string Symbol, string Name, string Words, double? Value, string? Unit, string? Formula, string? By = null);
