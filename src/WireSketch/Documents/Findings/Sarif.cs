using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.Json;
using WireSketch.Diagnostics;
using WireSketch.Rules;
using WireSketch.Text;

namespace WireSketch.Documents.Findings;

/// <summary>
/// Findings as SARIF 2.1.0 (OASIS). Nothing in it depends on the machine or the hour. A finding keeps its fingerprint when lines
/// move above it: it is made of the rule, what the finding is about, and which of several it is.
/// </summary>
public static class Sarif
{
    private const string Folder = "SPECS";
    private const string Schema = "https://json.schemastore.org/sarif-2.1.0.json";

    private static readonly SarifContext Context = new(new JsonSerializerOptions(FindingsJson.Options));

    /// <param name="report">The findings.</param>
    /// <param name="rules">The cards of the rule book.</param>
    /// <param name="version">Version of the program.</param>
    public static string Write(FindingsReport report, ImmutableArray<RuleCard> rules, string version)
    {
        var cards = rules.ToDictionary(c => c.Id, StringComparer.Ordinal);
        var entries = report.All.Select(f => f.Rule)
            .Concat(cards.Keys)
            .Distinct()
            .Order(StringComparer.Ordinal)
            .Select(id => Entry(id, cards.GetValueOrDefault(id)))
            .ToImmutableArray();
        var index = entries.Select((e, i) => (e.Id, i)).ToDictionary(x => x.Id, x => x.i, StringComparer.Ordinal);
        var seen = new Dictionary<string, int>(StringComparer.Ordinal);
        var results = report.All.Select(f => Result(f, index[f.Rule], report.NameOf, seen)).ToImmutableArray();
        var run = new SarifRun(
            new(new("wiresketch", version, entries)),
            new Dictionary<string, SarifFolder>(StringComparer.Ordinal)
            {
                [Folder] = new(new("the folder in which wiresketch was called"))
            },
            "utf16CodeUnits", results);
        return JsonSerializer.Serialize(new SarifLog(Schema, "2.1.0", [run]), Context.SarifLog) + "\n";
    }

    private static SarifRule Entry(string id, RuleCard? card)
    {
        var title = card?.Title ?? "The spec cannot be understood here";
        var why = card?.Why ?? "What is written is not in the language, so it would not be built as it was meant.";
        return new(
            id, Name(id), new(title), new(why), new($"{why} Basis: {card?.Basis.ToString() ?? "the language itself"}."),
            new(Level(card?.Severity ?? Severity.Error)), new([id.Split('/')[0]]));
    }

    private static SarifResult Result(Finding f, int index, Func<SourceFile, string> name, Dictionary<string, int> seen)
    {
        var key = $"{name(f.At.File)}|{f.Rule}|{string.Join(',', f.Subjects)}";
        var occurrence = seen[key] = seen.GetValueOrDefault(key) + 1;
        var print =
            Convert.ToHexStringLower(Sha256.Hash(Encoding.UTF8.GetBytes(
                string.Create(CultureInfo.InvariantCulture, $"{key}|{occurrence}"))))[..32];
        return new(
            f.Rule,
            index,
            Level(f.Severity),
            new(f.Help is { } help ? $"{f.Message} Help: {help}" : f.Message),
            [Location(f.At, name, null)],
            Array(f.Notes.Where(n => n.At is not null).Select(n => Location(n.At!.Value, name, n.Message))),
            new Dictionary<string, string>(StringComparer.Ordinal) { ["primaryLocationLineHash"] = print, ["wiresketch/v1"] = print },
            Array(f.Fixes.Select(x =>
                new SarifFix(
                    new(x.Says),
                    [
                        .. x.Edits.GroupBy(e => e.At.File)
                            .Select(g =>
                                new SarifChange(
                                    Artifact(g.Key, name),
                                    [.. g.Select(e => new SarifReplacement(Region(e.At), new(e.Words)))]))
                    ]))),
            f.AcceptedBecause is { } why ? [new SarifSuppression("inSource", "accepted", why)] : null)
        {
            Properties = new(
                f.State,
                Array(FindingsJson.Values(f)),
                Array(f.Wants.Select(w => new WantedEntry(w.Run, w.Size.ToString(), w.Size.Area.Value)))),
        };
    }

    private static ImmutableArray<T>? Array<T>(IEnumerable<T> items) => items.ToImmutableArray() is { IsEmpty: false } array ? array : null;

    private static SarifLocation Location(SourceSpan at, Func<SourceFile, string> name, string? message) =>
        new(new(Artifact(at.File, name), Region(at)), message is null ? null : new(message));

    private static SarifArtifact Artifact(SourceFile file, Func<SourceFile, string> name) =>
        new(string.Join('/', name(file).Replace('\\', '/').Split('/').Select(Uri.EscapeDataString)), Folder);

    private static SarifRegion Region(SourceSpan at) => new(at.Line, at.Column, at.EndLine, at.EndColumn);

    private static string Level(Severity severity) =>
        severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "note" };

    /// <summary><c>supply/fuse-too-far</c> as <c>SupplyFuseTooFar</c>.</summary>
    private static string Name(string id) =>
        string.Concat(id.Split('/', '-').Where(w => w.Length > 0).Select(w => char.ToUpperInvariant(w[0]) + w[1..]));
}
