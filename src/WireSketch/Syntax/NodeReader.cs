using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;
using YamlDotNet.Core;
using YamlDotNet.Core.Events;

namespace WireSketch.Syntax;

/// <summary>Builds nodes from the events of one stretch of YAML. Findings that do not stop the reading are gathered on the way.</summary>
internal sealed class NodeReader
{
    private readonly SourceFile file;
    private readonly string text;
    private readonly int offset;
    private readonly Parser parser;
    private readonly ScalarNode lost;
    private int depth;
    private int aliased;

    internal NodeReader(SourceFile file, string text, int start, int end, ImmutableDictionary<string, Anchored> anchors, int aliased)
    {
        this.file = file;
        this.text = text;
        offset = start;
        Anchors = anchors;
        this.aliased = aliased;
        lost = new(new SourceSpan(file, start, 0), "", ScalarForm.Plain);
        parser = new Parser(new SteadyScanner(new Scanner(new StringReader(text[start..end]), skipComments: true)));
    }

    /// <summary>A value with a name, and how many values it holds with all that is in it.</summary>
    internal sealed record Anchored(SyntaxNode Node, int Size);

    internal ImmutableDictionary<string, Anchored> Anchors { get; private set; }

    internal int Aliased => aliased;

    /// <summary>A value was refused and left out.</summary>
    internal bool Lost { get; private set; }

    /// <summary>The end of what was read last.</summary>
    internal int Reached => Math.Min(text.Length, (int)(parser.Current?.End.Index ?? 0) + offset);

    internal List<Finding> Findings { get; } = [];

    /// <summary>
    /// The value of the stretch; null if it is empty. Throws <see cref="YamlMistakeException"/> or YamlDotNet's own at a slip.
    /// </summary>
    internal SyntaxNode? Read()
    {
        while (parser.MoveNext() && parser.Current is StreamStart or DocumentStart)
        {
        }

        if (parser.Current is null or StreamEnd or DocumentEnd or StreamStart)
        {
            return null;
        }

        var (node, _) = Node();
        while (parser.MoveNext())
        {
            if (parser.Current is not (DocumentEnd or StreamEnd))
            {
                throw new YamlMistakeException(Place(parser.Current!.Start.Index, parser.Current.End.Index), null);
            }
        }

        return node;
    }

    /// <summary>Reads the value at the current event and leaves its last event current.</summary>
    private (SyntaxNode Node, int Size) Node()
    {
        var current = parser.Current
            ?? throw new YamlMistakeException(Place(text.Length - offset, text.Length - offset), "the file ends in the middle of a value");
        switch (current)
        {
            case AnchorAlias alias:
                return Alias(alias);
            case Scalar scalar:
                return Named(scalar, new ScalarNode(ScalarPlace(scalar), scalar.Value, FormOf(scalar.Style)), 1);
            case MappingStart map:
                return Deeper(map, () => Map(map));
            case SequenceStart list:
                return Deeper(list, () => List(list));
            default:
                throw new YamlMistakeException(Place(current.Start.Index, current.End.Index), null);
        }
    }

    private (SyntaxNode Node, int Size) Deeper(NodeEvent begin, Func<(SyntaxNode Node, int Size)> read)
    {
        if (++depth > SyntaxTree.DeepestNesting)
        {
            throw new YamlMistakeException(
                Place(begin.Start.Index, begin.Start.Index + 1),
                $"more than {SyntaxTree.DeepestNesting} levels of maps and lists stand inside each other here");
        }

        var (node, size) = read();
        depth--;
        return Named(begin, node, size);
    }

    private (SyntaxNode Node, int Size) Named(NodeEvent at, SyntaxNode node, int size)
    {
        if (!at.Tag.IsEmpty && at.Tag.Value != "?")
        {
            var start = TagStart(at);
            Refuse(
                start,
                $"\"{start.Words}\" is a tag of YAML, which a spec does not use",
                "leave it out; what describes several devices alike goes under parts, wire types under wires; text that begins with ! "
                    + "goes in quotes",
                start);
        }

        if (!at.Anchor.IsEmpty)
        {
            Anchors = Anchors.SetItem(at.Anchor.Value, new(node, size));
        }

        return (node, size);
    }

    private (SyntaxNode Node, int Size) Alias(AnchorAlias alias)
    {
        var at = Place(alias.Start.Index, alias.End.Index);
        var name = alias.Value.Value;
        if (!Anchors.TryGetValue(name, out var anchored))
        {
            Refuse(
                at,
                $"\"*{name}\" stands for a value named &{name}, and no such value is complete before it",
                "if it is meant as text, put it in quotes");
            Lost = true;
            return (lost, 1);
        }

        if (anchored.Size > SyntaxTree.MostAliased - aliased)
        {
            Refuse(
                at,
                $"the aliases of this file stand for more than {SyntaxTree.MostAliased} values in all",
                "describe gear once under parts and name it with part: instead");
            Lost = true;
            return (lost, 1);
        }

        aliased += anchored.Size;
        return (new AliasNode(at, anchored.Node), anchored.Size);
    }

    private (SyntaxNode Node, int Size) List(SequenceStart begin)
    {
        var items = ImmutableArray.CreateBuilder<SyntaxNode>();
        var size = 1;
        while (Next() is not SequenceEnd)
        {
            var (node, n) = Node();
            size += n;
            if (!ReferenceEquals(node, lost))
            {
                items.Add(node);
            }
        }

        var flow = begin.Style == SequenceStyle.Flow;
        return (new ListNode(CollectionPlace(begin, flow, items.Count > 0 ? items[^1].At.End : null), items.ToImmutable(), flow), size);
    }

    private (SyntaxNode Node, int Size) Map(MappingStart begin)
    {
        var flow = begin.Style == MappingStyle.Flow;
        var entries = ImmutableArray.CreateBuilder<MapEntry>();
        var seen = new Dictionary<string, ScalarNode>(StringComparer.Ordinal);
        var size = 1;
        var last = (int?)null;
        while (Next() is not MappingEnd)
        {
            var (key, _) = Node();
            Next();
            var (value, n) = Node();
            size += n + 1;
            last = Math.Max(last ?? 0, Math.Max(key.At.End, value.At.End));
            if (ReferenceEquals(key, lost) || ReferenceEquals(value, lost))
            {
                continue;
            }

            if (key.Meant is not ScalarNode { At.Length: > 0 } word || key is AliasNode)
            {
                Refuse(key.At, "a key must be a word", "write key: value; text with a colon in it goes in quotes");
                continue;
            }

            if (flow && entries.Count > 0 && FlowSlips.CommaInNumber(file, entries[^1], word, value) is var (slip, mended))
            {
                Findings.Add(slip);
                entries[^1] = mended;
                continue;
            }

            if (flow && FlowSlips.CommaInText(file, text, entries, word, value) is { } cut)
            {
                Findings.Add(cut.Finding);
                if (cut.Before is { } whole)
                {
                    entries[^1] = whole;
                }

                continue;
            }

            (word, value) = flow ? MissingSpace(word, value) : (word, value);
            if (word is { Value: "<<", Style: ScalarForm.Plain })
            {
                Lost = true;
                Refuse(
                    word.At,
                    "\"<<\" merges maps in YAML, which a spec does not use",
                    "describe gear once under parts and name it with part:, or a wire type under wires and name it with wire:; fields "
                        + "written beside part: override the part's");
            }
            else if (seen.TryGetValue(word.Value, out var first))
            {
                Findings.Add(new(
                    "spec/duplicate-key",
                    Severity.Error,
                    $"\"{word.Value}\" is written twice here; the first is on line {first.At.Line}",
                    word.At)
                {
                    Help = "keep one of them, or give one another name",
                    Notes = [new($"\"{word.Value}\" the first time", first.At)],
                });
            }
            else
            {
                seen.Add(word.Value, word);
                entries.Add(new(word, value));
            }
        }

        // A single pair in a list, as in [a: b, c], has no brackets of its own, and the parser puts it at the very beginning.
        var bare = flow && depth > 1 && begin.Start.Index == 0;
        return (
            new MapNode(
                bare && entries.Count > 0 ? PairPlace(entries[0]) : CollectionPlace(begin, flow, last),
                entries.ToImmutable(),
                flow),
            size);
    }

    /// <summary>From the key to the end of its value; of a value that is not there the parser says anything.</summary>
    private static SourceSpan PairPlace(MapEntry pair) => pair.Value.At.Length == 0 ? pair.Key.At : pair.At;

    /// <summary>In a flow map <c>{a:b}</c> is a key without a value: says so, and goes on with what was meant.</summary>
    private (ScalarNode Key, SyntaxNode Value) MissingSpace(ScalarNode key, SyntaxNode value)
    {
        var colon = key.Value.IndexOf(':', StringComparison.Ordinal);
        if (key.Style != ScalarForm.Plain || value is not ScalarNode { At.Length: 0 } || colon <= 0 || key.At.Length != key.Value.Length)
        {
            return (key, value);
        }

        var at = key.At.Start + colon + 1;
        Findings.Add(MissingSpaceAt(new SourceSpan(file, key.At.Start, key.At.Length), new SourceSpan(file, at, 0), key.Value[..colon]));
        return (
            new(new SourceSpan(file, key.At.Start, colon), key.Value[..colon], ScalarForm.Plain),
            new ScalarNode(new SourceSpan(file, at, key.At.End - at), key.Value[(colon + 1)..], ScalarForm.Plain));
    }

    internal static Finding MissingSpaceAt(SourceSpan all, SourceSpan gap, string key) =>
        new(SyntaxTree.Rule, Severity.Error, $"a space is missing after the colon of \"{key}:\"", all)
        {
            Help = $"write {key}: {all.Words[(gap.Start - all.Start)..]}",
            Fixes = [new("put a space after the colon", [new(gap, " ")])],
        };

    private ParsingEvent Next()
    {
        if (!parser.MoveNext() || parser.Current is null)
        {
            throw new YamlMistakeException(Place(text.Length - offset, text.Length - offset), "the file ends in the middle of a value");
        }

        return parser.Current;
    }

    private void Refuse(SourceSpan at, string message, string help, SourceSpan? delete = null) =>
        Findings.Add(new(SyntaxTree.Rule, Severity.Error, message, at)
        {
            Help = help,
            Fixes = delete is { } d ? [new("leave it out", [new(d, "")])] : [],
        });

    private SourceSpan Place(long start, long end) => new(file, (int)start + offset, (int)(end - start));

    /// <summary>A scalar's own characters, without its anchor, tag and the blanks behind a block.</summary>
    private SourceSpan ScalarPlace(Scalar scalar)
    {
        if (scalar is { Style: ScalarStyle.Plain, Value.Length: 0 })
        {
            return Place(scalar.Start.Index, scalar.Start.Index);
        }

        var start = SkipProperties((int)scalar.Start.Index + offset, scalar);
        var end = Math.Max(start, (int)scalar.End.Index + offset);
        while (end > start && char.IsWhiteSpace(text[end - 1]))
        {
            end--;
        }

        return new(file, start, end - start);
    }

    /// <summary>YamlDotNet gives points: a block's ends lie past what follows it, a flow's end before its bracket.</summary>
    private SourceSpan CollectionPlace(NodeEvent begin, bool flow, int? lastEnd)
    {
        var start = SkipProperties((int)begin.Start.Index + offset, begin);
        var end = flow ? (int)parser.Current!.Start.Index + offset + 1 : Math.Max(lastEnd ?? start, start);
        return new(file, start, Math.Min(end, text.Length) - start);
    }

    private int SkipProperties(int start, NodeEvent at)
    {
        if (at.Anchor.IsEmpty && at.Tag.IsEmpty)
        {
            return start;
        }

        while (start < text.Length && text[start] is '&' or '!')
        {
            while (start < text.Length && !char.IsWhiteSpace(text[start]))
            {
                start++;
            }

            while (start < text.Length && char.IsWhiteSpace(text[start]))
            {
                start++;
            }
        }

        return Math.Min(start, text.Length);
    }

    private SourceSpan TagStart(NodeEvent at)
    {
        var start = (int)at.Start.Index + offset;
        var tag = text.IndexOf('!', start);
        var end = tag;
        while (end >= 0 && end < text.Length && !char.IsWhiteSpace(text[end]) && text[end] is not (',' or ']' or '}'))
        {
            end++;
        }

        return tag < 0 ? new(file, start, 0) : new(file, tag, end - tag);
    }

    private static ScalarForm FormOf(ScalarStyle style) => style switch
    {
        ScalarStyle.SingleQuoted => ScalarForm.SingleQuoted,
        ScalarStyle.DoubleQuoted => ScalarForm.DoubleQuoted,
        ScalarStyle.Literal or ScalarStyle.Folded => ScalarForm.Block,
        _ => ScalarForm.Plain,
    };
}

/// <summary>A slip that stops the reading of a stretch.</summary>
internal sealed class YamlMistakeException(SourceSpan at, string? says) : Exception(says)
{
    /// <summary>What is wrong, in our own words; null where the parser stopped, and its place decides.</summary>
    internal string? Says { get; } = says;

    internal SourceSpan At { get; } = at;
}
