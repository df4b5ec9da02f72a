using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Syntax;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>
/// Reads the keys of a map of a spec. Several maps may lie over each other, a device's own over its part's: the upper one
/// wins, and maps within them merge key by key.
/// </summary>
internal sealed partial class SpecFields : Fields
{
    private readonly SpecFindings findings;
    private readonly ImmutableArray<MapNode> layers;
    private readonly OrderedDictionary<string, bool> asked;
    private readonly List<(ImmutableArray<string> Keys, Finding Finding)> missing;
    private readonly string? subject;
    private readonly List<(string Key, ImmutableArray<string> Words)> taken = [];
    private readonly bool partial;

    /// <param name="findings">Where findings go.</param>
    /// <param name="key">The key under which the map stands.</param>
    /// <param name="layers">The maps, the uppermost first.</param>
    /// <param name="subject">Id of the gear or run that findings concern.</param>
    /// <param name="partial">What is absent may come from elsewhere: nothing is called missing.</param>
    internal SpecFields(
        SpecFindings findings, Written<string> key, ImmutableArray<MapNode> layers, string? subject = null, bool partial = false)
        : this(findings, key, layers, subject, partial, new(StringComparer.Ordinal), [])
    {
    }

    private SpecFields(
        SpecFindings findings,
        Written<string> key,
        ImmutableArray<MapNode> layers,
        string? subject,
        bool partial,
        OrderedDictionary<string, bool> asked,
        List<(ImmutableArray<string> Keys, Finding Finding)> missing)
    {
        this.missing = missing;
        this.asked = asked;
        this.findings = findings;
        Key = key;
        this.layers = layers;
        this.subject = subject;
        this.partial = partial;
    }

    public override Written<string> Key { get; }

    public override SourceSpan At => layers[0].At.Length > 0 ? layers[0].At : Key.At;

    /// <summary>The maps, the uppermost first.</summary>
    internal ImmutableArray<MapNode> Layers => layers;

    internal SpecFindings Findings => findings;

    /// <summary>The same with more maps below; what is asked of either counts for both.</summary>
    internal SpecFields Over(IEnumerable<MapNode> below) => new(findings, Key, [.. layers, .. below], subject, partial, asked, missing);

    /// <summary>The same, as a description that something else completes; what is asked of either counts for both.</summary>
    internal SpecFields AsPartial() => new(findings, Key, layers, subject, partial: true, asked, missing);

    /// <summary>Counts what was asked of other fields as asked of these.</summary>
    internal void AskAll(SpecFields other)
    {
        foreach (var key in other.asked.Keys)
        {
            Ask(key);
        }
    }

    /// <summary>Leaves all keys alone: what they mean cannot be known.</summary>
    /// <param name="but">A key that is missing: what may be meant for it is not left alone.</param>
    internal void LeaveAll(string? but = null)
    {
        foreach (var entry in layers.SelectMany(l => l.Entries))
        {
            if (but is null || Nearest.To(entry.Key.Value, [but]) is null)
            {
                Ask(entry.Key.Value);
            }
        }
    }

    internal override Gear? ReadGear(GearReader reader) => reader.Read(this);

    internal override void ReadPart(GearReader reader) => reader.ReadAlone(this);

    public override bool Has(string key) => layers.Any(l => Spelling.Find(l, key) is not null);

    internal override bool MayHave(string key) =>
        Has(key) || layers.SelectMany(l => l.Entries).Any(e => TradeWords.Key(e.Key.Value, [key]) is not null);

    public override void Report(Finding finding) =>
        findings.Add(finding.Subjects.IsEmpty && subject is not null ? finding with { Subjects = [subject] } : finding);

    /// <summary>Reports what may only seem wrong because part of the text could not be read.</summary>
    internal void ReportUnlessBroken(Finding finding)
    {
        if (!findings.Broken)
        {
            Report(finding);
        }
    }

    public override void Require(params ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            Ask(key);
            if (!Has(key) && !partial && !findings.Broken)
            {
                missing.Add(
                    (
                        [key],
                        new(
                            "spec/missing", Severity.Error, $"{Key.Value} has no {key}", Key.At.Length > 0
                                ? Key.At
                                : At)
                        { Help = $"add {key}:" }));
            }
        }
    }

    public override void Choose(bool needed, params ReadOnlySpan<string> keys)
    {
        var there = new List<string>();
        foreach (var key in keys)
        {
            Ask(key);
            if (Has(key))
            {
                there.Add(key);
            }
        }

        if (there.Count > 1)
        {
            Report(new(
                "spec/value",
                Severity.Error,
                $"{Key.Value} has {string.Join(" and ", there)}; one of them says it all",
                Entry(there[1])!.Key.At)
            { Help = $"keep {string.Join(" or ", there)}" });
        }
        else if (needed)
        {
            RequireAny(keys);
        }
    }

    public override void RequireAny(params ReadOnlySpan<string> keys)
    {
        var any = false;
        foreach (var key in keys)
        {
            Ask(key);
            any |= Has(key);
        }

        if (!any && !partial && !findings.Broken)
        {
            var list = string.Join(" or ", keys.ToArray());
            missing.Add(
                (
                    [.. keys],
                    new(
                        "spec/missing", Severity.Error, $"{Key.Value} has no {list}", Key.At.Length > 0
                            ? Key.At
                            : At)
                    { Help = $"add {list}" }));
        }
    }

    public override T? Map<T>(string key, string holds, Func<Fields, T> read)
        where T : class
    {
        Ask(key);
        if (Entry(key) is { Value.Meant: ScalarNode { IsNull: false } word } single && KeyFor(word.Value, read) is { } within)
        {
            Report(new("spec/type", Severity.Error, $"{key} takes a map of keys with values; this is a single value", word.At)
            {
                Help = $"write {single.Key.Value}: {{ {within} }}",
                Fixes = [new($"write {{ {within} }}", [new(word.At, $"{{ {within} }}")])],
            });
            return null;
        }

        return Stack(key, layers) is [_, ..] maps && Entry(key) is { } entry
            ? Within(entry.Key, maps, read, Key.Words.Length == 0 ? key : $"{key} of {Key.Value}")
            : null;
    }

    public override ImmutableArray<T> Each<T>(string key, string holds, Func<Fields, T?> read, bool phrases = false)
        where T : class
    {
        Ask(key);
        var maps = Stack(key, layers);
        var found = ImmutableArray.CreateBuilder<T>();
        foreach (var id in maps.Reverse().SelectMany(m => m.Entries).Select(e => e.Key.Value).Distinct(StringComparer.Ordinal))
        {
            var name = maps.Select(m => m.Find(id)).First(e => e is not null)!.Key;
            if (Ids.Check(name, phrases) is { } trouble)
            {
                Report(trouble);
            }

            var inner = Stack(id, maps);
            if (inner.Length > 0 && Within(name, inner, read, $"{id}, under {key},", key is "gear" or "runs" ? id : null) is { } value)
            {
                found.Add(value);
            }
        }

        return found.ToImmutable();
    }

    public override ImmutableArray<T> List<T>(string key, string holds, Func<Fields, T> read)
        where T : class
    {
        Ask(key);
        if (Entry(key) is not { } entry)
        {
            return [];
        }

        if (entry.Value.Meant is not ListNode list)
        {
            WrongForm(entry, "a list, each entry behind a dash", "put \"- \" before each entry, on lines of their own");
            return [];
        }

        var found = ImmutableArray.CreateBuilder<T>();
        foreach (var item in list.Items)
        {
            if (item.Meant is MapNode map)
            {
                found.Add(Within(new ScalarNode(entry.Key.At, entry.Key.Value, entry.Key.Style), [map], read, $"an entry of {key}")!);
            }
            else
            {
                Report(new(
                    "spec/type",
                    Severity.Error,
                    $"an entry of {key} is made of keys with values; this is {FormOf(item.Meant)}",
                    Place(item, entry.Key))
                { Help = "write - key: value" });
            }
        }

        return found.ToImmutable();
    }

    public override T? MapOrWords<T>(string key, string holds, Func<Fields, T> readMap, Func<Written<string>, T?> readWords)
        where T : class => Entry(key) is { Value.Meant: ScalarNode } ? Worded(key, holds, readWords) : Map(key, holds, readMap);

    private void Ask(string key) => asked.TryAdd(key, true);

    /// <summary>The uppermost entry of a key.</summary>
    internal MapEntry? Entry(string key) => layers.Select(l => Spelling.Find(l, key)).FirstOrDefault(e => e is not null);

    private T? Within<T>(ScalarNode name, ImmutableArray<MapNode> maps, Func<Fields, T?> read, string of, string? about = null)
        where T : class
    {
        var fields = new SpecFields(findings, new(name.Value, name.Value, name.At), maps, about ?? subject, partial);
        var value = read(fields);
        fields.Finish(of);
        return value;
    }

    /// <summary>
    /// The maps that stand under a key in maps that lie over each other, the uppermost first; what is no map ends the stack and is
    /// reported.
    /// </summary>
    private ImmutableArray<MapNode> Stack(string key, ImmutableArray<MapNode> over)
    {
        var maps = ImmutableArray.CreateBuilder<MapNode>();
        foreach (var entry in over.Select(l => Spelling.Find(l, key)))
        {
            switch (entry?.Value.Meant)
            {
                case null:
                    break;
                case MapNode map:
                    maps.Add(map);
                    break;
                case ScalarNode { IsNull: true }:
                    NoValue(entry);
                    return maps.ToImmutable();
                default:
                    WrongForm(
                        entry,
                        "a map of keys with values",
                        MapHelp(key, entry.Value.Meant));
                    return maps.ToImmutable();
            }
        }

        return maps.ToImmutable();
    }

    private static string MapHelp(string key, SyntaxNode value) => value is ListNode
        ? $"leave out the dash before each entry: write {key}: {{ key: value }}, or the keys on lines below it, two spaces deeper"
        : $"write {key}: {{ key: value }}, or the keys on lines below it, two spaces deeper";

    private void NoValue(MapEntry entry) =>
        Report(new(
            "spec/value", Severity.Error, $"{entry.Key.Value} has no value", entry.Key.At)
        { Help = "write one, or leave the key out" });

    private void WrongForm(MapEntry entry, string wanted, string help)
    {
        if (entry.Value.Meant is ScalarNode { IsNull: true })
        {
            NoValue(entry);
            return;
        }

        Report(new(
            "spec/type",
            Severity.Error,
            $"{entry.Key.Value} takes {wanted}; this is {FormOf(entry.Value.Meant)}",
            Place(entry.Value, entry.Key))
        { Help = help });
    }

    /// <summary>Where to point for a value: its first line, or its key if nothing stands there.</summary>
    private static SourceSpan Place(SyntaxNode value, ScalarNode key) =>
        value.At.Length == 0
            ? key.At
            : value.At with
            {
                Length = Math.Min(
                    value.At.Length,
                    value.At.File.LineStart(value.At.Line) + value.At.File.Line(value.At.Line).Length - value.At.Start)
            };

    private static string FormOf(SyntaxNode node) => node switch
    {
        MapNode => "a map",
        ListNode => "a list",
        _ => "a single value",
    };
}
