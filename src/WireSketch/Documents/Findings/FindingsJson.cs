using System.Collections.Immutable;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Serialization;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Documents.Findings;

/// <summary>
/// Findings as JSON. Each has <c>values</c> (role measured, limit or other; value in the base unit; unit; text as printed), <c>state</c>,
/// <c>wants</c> (run, size, area in mm2) and <c>fixes</c> with their edits. Fields are only ever added under the same <c>version</c>;
/// readers pass by what they do not know. Lines and
/// columns count from 1, columns in UTF-16 units; <c>endColumn</c> is one past the last character.
/// </summary>
public static class FindingsJson
{
    internal const int Version = 1;

    internal static JsonSerializerOptions Options { get; } = new()
    {
        PropertyNamingPolicy = JsonNamingPolicy.CamelCase,
        DefaultIgnoreCondition = JsonIgnoreCondition.WhenWritingNull,
        Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping,
        WriteIndented = true,
        NewLine = "\n",
    };

    private static readonly FindingsContext Context = new(new JsonSerializerOptions(Options));

    public static string Write(FindingsReport report, string? fingerprint = null)
    {
        var document = new FindingsDocument(
            Version,
            report.Specs,
            report.Unread.IsEmpty ? null : report.Unread,
            fingerprint,
            new(report.Errors, report.Warnings, report.Advice, report.Accepted),
            [.. report.All.Select(f => Entry(f, report.NameOf))]);
        return JsonSerializer.Serialize(document, Context.FindingsDocument) + "\n";
    }

    private static FindingEntry Entry(Finding f, Func<SourceFile, string> name) => new(
        f.Rule, FindingsReport.Word(f.Severity), f.Message, f.Help, Place(f.At, name), f.Subjects,
        [.. f.Notes.Select(n => new NoteEntry(n.Message, n.At is { } at ? Place(at, name) : null))],
        [.. f.Fixes.Select(x => new FixEntry(x.Says, [.. x.Edits.Select(e => new EditEntry(Place(e.At, name), e.Words))]))],
        f.AcceptedBecause)
    {
        State = f.State,
        Values = Values(f),
        Wants = [.. f.Wants.Select(w => new WantedEntry(w.Run, w.Size.ToString(), w.Size.Area.Value))],
    };

    internal static ImmutableArray<ValueEntry> Values(Finding f) => [
        .. f.Values.Select(v => new ValueEntry(Role(v.Role), v.Name, v.Value, v.Unit, v.Text))
    ];

    private static string Role(ValueRole role) =>
        role switch { ValueRole.Measured => "measured", ValueRole.Limit => "limit", _ => "other" };

    internal static PlaceEntry Place(SourceSpan at, Func<SourceFile, string> name) =>
        new(name(at.File), at.Line, at.Column, at.EndLine, at.EndColumn);
}

internal sealed record FindingsDocument(
    int Version, ImmutableArray<string> Specs, ImmutableArray<string>? Unread, string? Fingerprint, FindingCounts Summary,
    ImmutableArray<FindingEntry> Findings);

internal sealed record FindingCounts(int Errors, int Warnings, int Advice, int Accepted);

internal sealed record FindingEntry(
    string Rule, string Severity, string Message, string? Help, PlaceEntry At, ImmutableArray<string> Subjects,
    ImmutableArray<NoteEntry> Notes, ImmutableArray<FixEntry> Fixes,
    string? AcceptedBecause)
{
    /// <summary>The state of the system in which it holds, as the language writes it.</summary>
    public string? State { get; init; }

    /// <summary>The values of the sentence, in their order.</summary>
    public ImmutableArray<ValueEntry> Values { get; init; } = [];

    /// <summary>The sizes that the help asks for.</summary>
    public ImmutableArray<WantedEntry> Wants { get; init; } = [];
}

/// <summary>
/// A value of a finding: role is measured, limit or other; value is in unit, a base unit (1 for a share, empty for a count).
/// </summary>
internal sealed record ValueEntry(string Role, string? Name, double Value, string Unit, string Text);

/// <summary>A size that a finding asks for a run, in words and by its area in mm2.</summary>
internal sealed record WantedEntry(string Run, string Size, double Area);

internal sealed record PlaceEntry(string File, int Line, int Column, int EndLine, int EndColumn);

internal sealed record NoteEntry(string Message, PlaceEntry? At);

internal sealed record FixEntry(string Says, ImmutableArray<EditEntry> Edits);

internal sealed record EditEntry(PlaceEntry At, string Words);

[JsonSerializable(typeof(FindingsDocument))]
internal sealed partial class FindingsContext : JsonSerializerContext;
