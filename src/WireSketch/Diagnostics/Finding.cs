using System.Collections.Immutable;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Diagnostics;

/// <summary>How much a finding matters.</summary>
public enum Severity
{
    /// <summary>Good practice; may stand.</summary>
    Advice,

    /// <summary>Likely trouble.</summary>
    Warning,

    /// <summary>Unsafe, or cannot work.</summary>
    Error,
}

/// <summary>Something a reader of the spec must know, with the place that causes it.</summary>
/// <param name="Rule">Stable id of the rule, <c>group/slug</c>.</param>
/// <param name="Severity">How much it matters.</param>
/// <param name="Message">One sentence that states what was found, with the numbers.</param>
/// <param name="At">The smallest stretch of the file that shows it.</param>
public sealed record Finding(string Rule, Severity Severity, string Message, SourceSpan At)
{
    /// <summary>What to do about it, as it would be typed; null where nothing short can be said.</summary>
    public string? Help { get; init; }

    /// <summary>The values that the sentence is written from, in their order in it.</summary>
    public ImmutableArray<FindingValue> Values { get; init; } = [];

    /// <summary>The state of the system in which it holds, as the language writes it; null if it holds in all or in none.</summary>
    public string? State { get; init; }

    /// <summary>The help with the sizes that it asks for; null where it asks for none.</summary>
    internal FindingText? HelpText { get; init; }

    /// <summary>The sizes that its help asks for.</summary>
    public ImmutableArray<WantedSize> Wants => HelpText?.Wants ?? [];

    /// <summary>What was found, as a value; null if the finding is about presence alone.</summary>
    public FindingValue? Measured => Values.FirstOrDefault(v => v.Role == ValueRole.Measured);

    /// <summary>What the measured value is held against; null if there is no limit.</summary>
    public FindingValue? Limit => Values.FirstOrDefault(v => v.Role == ValueRole.Limit);

    /// <summary>Other places that play a part.</summary>
    public ImmutableArray<FindingNote> Notes { get; init; } = [];

    /// <summary>Changes to the text that would mend it.</summary>
    public ImmutableArray<Fix> Fixes { get; init; } = [];

    /// <summary>Ids of the gear, runs or terminals it concerns, the chief one first: markers and <c>accept</c> go by these.</summary>
    public ImmutableArray<string> Subjects { get; init; } = [];

    /// <summary>The reason for which it was accepted; null if it was not.</summary>
    public string? AcceptedBecause { get; init; }

    /// <summary>The same with a value that its sentence does not print.</summary>
    internal Finding With<T>(ValueRole role, T quantity)
        where T : struct, IQuantity<T> => this with
        {
            Values = Values.Add(new(role, quantity.Value, Quantity.BaseUnit<T>(), Quantity.Print(quantity))),
        };

    /// <summary>An error that nobody has accepted: the install must not be built.</summary>
    public bool Blocks => Severity == Severity.Error && AcceptedBecause is null;

    /// <summary>Findings in the order in which they are shown: by file, place, then id.</summary>
    public static ImmutableArray<Finding> InOrder(IEnumerable<Finding> findings) =>
        [
            .. findings.OrderBy(f => f.At.File.Name, StringComparer.Ordinal)
                .ThenBy(f => f.At.Start)
                .ThenBy(f => f.Rule, StringComparer.Ordinal)
                .ThenBy(f => f.Message, StringComparer.Ordinal)];
}

/// <summary>Another place that plays a part in a finding.</summary>
public sealed record FindingNote(string Message, SourceSpan? At);

/// <summary>A change to the text that mends a finding.</summary>
public sealed record Fix(string Says, ImmutableArray<Edit> Edits)
{
    /// <summary>The size that it writes; null if it writes none.</summary>
    public WantedSize? Wants { get; init; }
}

/// <summary>A replacement of one stretch of text.</summary>
public sealed record Edit(SourceSpan At, string Words);
