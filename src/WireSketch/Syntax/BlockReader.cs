using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;
using YamlDotNet.Core;

namespace WireSketch.Syntax;

/// <summary>
/// Reads a block of YAML; if that fails, reads it entry by entry and goes down into the entry that fails, so that a slip costs
/// the smallest entry that holds it and every slip of a file is found in one run.
/// </summary>
internal sealed class BlockReader(SourceFile file, string text, ImmutableArray<Finding>.Builder findings)
{
    private const int DeepestSearch = 8;

    private ImmutableDictionary<string, NodeReader.Anchored> anchors = ImmutableDictionary<string, NodeReader.Anchored>.Empty;
    private int aliased;

    /// <summary>Something was left out because it could not be read.</summary>
    internal bool Broken { get; private set; }

    internal SyntaxNode? ReadRoot(int end) => Read(0, end, 0);

    private SyntaxNode? Read(int start, int end, int level)
    {
        if (Attempt(start, end, out var node) is not { } slip)
        {
            return node;
        }

        var pieces = level < DeepestSearch ? Pieces(start, end) : [];
        if (pieces.Count == 0)
        {
            return Leaf(slip, start, end);
        }

        return IsItem(pieces[0].Start) ? List(pieces) : Map(pieces, level);
    }

    private MapNode Map(List<(int Start, int End)> pieces, int level)
    {
        var entries = ImmutableArray.CreateBuilder<MapEntry>();
        var seen = new Dictionary<string, MapEntry>(StringComparer.Ordinal);
        foreach (var (start, end) in pieces)
        {
            var entry = Attempt(start, end, out var node) is { } slip ? Entry(slip, start, end, level) : node;
            if (entry is not (null or MapNode))
            {
                findings.Add(YamlMistakes.NoKey(file, text, entry, start, end));
                Broken = true;
            }

            foreach (var found in (entry as MapNode)?.Entries ?? [])
            {
                if (!seen.TryAdd(found.Key.Value, found) && seen[found.Key.Value] is var first)
                {
                    findings.Add(new(
                        "spec/duplicate-key",
                        Severity.Error,
                        $"\"{found.Key.Value}\" is written twice here; the first is on line {first.Key.At.Line}",
                        found.Key.At)
                    {
                        Help = "keep one of them, or give one another name",
                        Notes = [new($"\"{found.Key.Value}\" the first time", first.Key.At)],
                    });
                }
                else
                {
                    entries.Add(found);
                }
            }
        }

        return new(new SourceSpan(file, pieces[0].Start, pieces[^1].End - pieces[0].Start), entries.ToImmutable(), Flow: false);
    }

    private ListNode List(List<(int Start, int End)> pieces)
    {
        var items = ImmutableArray.CreateBuilder<SyntaxNode>();
        foreach (var (start, end) in pieces)
        {
            var item = Attempt(start, end, out var node) is { } slip ? Leaf(slip, start, end) : node;
            if (item is ListNode list)
            {
                items.AddRange(list.Items);
            }
            else if (item is not null)
            {
                findings.Add(YamlMistakes.NoKey(file, text, item, start, end));
                Broken = true;
            }
        }

        return new(new SourceSpan(file, pieces[0].Start, pieces[^1].End - pieces[0].Start), items.ToImmutable(), Flow: false);
    }

    /// <summary>An entry that fails as a whole: its heading alone, and what stands below it by itself.</summary>
    private SyntaxNode? Entry(YamlMistakeException slip, int start, int end, int level)
    {
        var line = file.LineAt(start);
        var body = line < file.LineCount ? Math.Min(file.LineStart(line + 1), end) : end;
        if (body >= end || !Lines.IsHeading(text.AsSpan(start, body - start)))
        {
            return Leaf(slip, start, end);
        }

        if (Attempt(start, body, out var heading) is not null
            || heading is not MapNode { Entries: [var only] }
            || Attempt(body, end, out _) is null)
        {
            return Leaf(slip, start, end);
        }

        return Read(body, end, level + 1) is { } value
            ? new MapNode(new SourceSpan(file, start, end - start), [only with { Value = value }], Flow: false)
            : null;
    }

    /// <summary>
    /// The smallest stretch that holds a slip. Tabs are put right for the reading, so that what stands there is not lost.
    /// </summary>
    private SyntaxNode? Leaf(YamlMistakeException slip, int start, int end)
    {
        if (Lines.TabsIn(file, text, start, end) is not { Length: > 0 } tabs)
        {
            findings.Add(YamlMistakes.Explain(slip, file, text, start, end));
            Broken = true;
            return null;
        }

        findings.Add(YamlMistakes.Tabs(tabs));
        var clean = text.ToCharArray();
        foreach (var tab in tabs)
        {
            clean.AsSpan(tab.Start, tab.Length).Fill(' ');
        }

        var found = ImmutableArray.CreateBuilder<Finding>();
        var again = new BlockReader(file, new string(clean), found) { anchors = anchors, aliased = aliased };
        if (again.Attempt(start, end, out var node) is not null)
        {
            Broken = true;
            return null;
        }

        findings.AddRange(found);
        Broken |= again.Broken;
        return node;
    }

    /// <summary>Reads a stretch at one go: null if that went well, otherwise what went wrong, and nothing is kept.</summary>
    private YamlMistakeException? Attempt(int start, int end, out SyntaxNode? node)
    {
        node = null;
        var reader = new NodeReader(file, text, start, end, anchors, aliased);
        try
        {
            node = reader.Read();
            anchors = reader.Anchors;
            aliased = reader.Aliased;
            findings.AddRange(reader.Findings);
            Broken |= reader.Lost;
            return null;
        }
        catch (YamlMistakeException slip)
        {
            return slip;
        }
        catch (YamlException slip)
        {
            return new YamlMistakeException(YamlMistakes.Place(file, start, end, slip), null);
        }
        catch (Exception slip) when (slip is InvalidOperationException or ArgumentException)
        {
            // The parser's own slips, without a place: a bracket that is not closed before the next key, a tag that is none.
            var from = Math.Min(reader.Reached, end);
            var tag = slip is ArgumentException ? text.IndexOf('!', from, end - from) : -1;
            return new YamlMistakeException(tag < 0 ? new SourceSpan(file, from, 0) : new SourceSpan(file, tag, 1), null);
        }
    }

    /// <summary>The entries of a block: each begins at a line with the indentation of the first. None if there is no way to cut.</summary>
    private List<(int Start, int End)> Pieces(int start, int end)
    {
        var pieces = new List<(int Start, int End)>();
        var indent = -1;
        var item = false;
        for (var line = file.LineAt(start); line <= file.LineCount && file.LineStart(line) < end; line++)
        {
            var at = file.LineStart(line);
            var words = text.AsSpan(at, Math.Min(file.Line(line).Length, end - at));
            var own = Lines.Indentation(words);
            if (own == words.Length || words[own] is '#' || (line == file.LineAt(start) && at < start) || words.TrimEnd() is "---")
            {
                continue;
            }

            if (indent < 0)
            {
                indent = own;
                item = IsItem(at);
                pieces.Add((at, end));
                if (words[own] is '[' or '{' or '"' or '\'' or '|' or '>')
                {
                    return [];
                }
            }
            else if (own == indent && IsItem(at) == item && words[own] is not (']' or '}' or '\t'))
            {
                pieces[^1] = (pieces[^1].Start, at);
                pieces.Add((at, end));
            }
        }

        return pieces;
    }

    private bool IsItem(int lineStart)
    {
        var line = text.AsSpan(lineStart);
        var own = Lines.Indentation(line);
        return own < line.Length && line[own] == '-' && (own + 1 == line.Length || char.IsWhiteSpace(line[own + 1]));
    }
}
