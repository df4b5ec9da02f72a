using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;
using YamlDotNet.Core;

namespace WireSketch.Syntax;

/// <summary>Says in plain words what went wrong where YAML could not be read.</summary>
internal static class YamlMistakes
{
    internal static Finding Explain(Exception slip, SourceFile file, string text, int start, int end)
    {
        var at = slip is YamlMistakeException { At: var place } ? place : new SourceSpan(file, start, 0);
        var (message, help) = Reword(slip.Message, at, text);
        return OpenBracket(file, text, start, end) ?? SpaceMissing(file, text, start, end, slip.Message) ?? new(SyntaxTree.Rule, Severity.Error, message, at) { Help = help };
    }

    /// <summary>A line among keys that can be read but is no key with a value.</summary>
    internal static Finding NoKey(SourceFile file, string text, SyntaxNode node, int start, int end) =>
        SpaceMissing(file, text, start, end, "invalid mapping")
        ?? new(SyntaxTree.Rule, Severity.Error, "this line has no colon, so it is neither a key nor a value", node.At with { Length = Math.Min(node.At.Length, file.LineStart(node.At.Line) + file.Line(node.At.Line).Length - node.At.Start) })
        {
            Help = "write key: value",
        };

    internal static Finding Tabs(ImmutableArray<SourceSpan> tabs)
    {
        var more = tabs.Length == 1 ? "" : $"; {tabs.Length} lines of this entry have one";
        return new(SyntaxTree.Rule, Severity.Error, "a tab stands where a line is indented: only spaces may" + more, tabs[0])
        {
            Help = "put two spaces for each tab, and set your editor to write spaces in this file",
            Fixes = [new("put two spaces for each tab", [.. tabs.Select(t => new Edit(t, t.Words.Replace("\t", "  ", StringComparison.Ordinal)))])],
        };
    }

    /// <summary>Where YamlDotNet saw the slip, kept inside the stretch that was read, at least one character of a line.</summary>
    internal static SourceSpan Place(SourceFile file, int start, int end, YamlException slip)
    {
        var from = Math.Clamp(start + (int)slip.Start.Index, start, end);
        var to = Math.Clamp(start + (int)slip.End.Index, from, end);
        while (from == to && from > start && (from == file.Text.Length || file.Text[from] is '\n' or '\r'))
        {
            from--;
        }

        var lineEnd = file.LineStart(file.LineAt(from)) + file.Line(file.LineAt(from)).Length;
        to = Math.Max(Math.Min(to, lineEnd), Math.Min(from + 1, file.Text.Length));
        return new(file, from, to - from);
    }

    private static Finding? OpenBracket(SourceFile file, string text, int start, int end)
    {
        var open = new Stack<int>();
        for (var i = start; i < end; i++)
        {
            switch (text[i])
            {
                case '#' when i == 0 || char.IsWhiteSpace(text[i - 1]):
                    i = text.AsSpan(i, end - i).IndexOfAny('\n', '\r') is >= 0 and var n ? i + n : end;
                    break;
                case '"' or '\'' when BeginsScalar(text, i, start):
                    var quote = text[i];
                    var first = i;
                    for (i++; i < end && (text[i] != quote || (quote == '"' && text[i - 1] == '\\')); i++)
                    {
                    }

                    if (i >= end)
                    {
                        return new(SyntaxTree.Rule, Severity.Error, "this quotation mark has no partner", new SourceSpan(file, first, 1)) { Help = $"put another {quote} where the text ends" };
                    }

                    break;
                case '[' or '{' when open.Count > 0 || BeginsScalar(text, i, start):
                    open.Push(i);
                    break;
                case ']' or '}' when open.TryPeek(out var last):
                    var right = text[last] == '[' ? ']' : '}';
                    if (text[i] != right)
                    {
                        return new(SyntaxTree.Rule, Severity.Error, $"this {text[i]} does not fit the {text[last]} on line {file.LineAt(last)}", new SourceSpan(file, i, 1))
                        {
                            Help = $"close {text[last]} with {right} first",
                            Notes = [new("opened here", new SourceSpan(file, last, 1))],
                        };
                    }

                    open.Pop();
                    break;
                case ']' or '}':
                    return new(SyntaxTree.Rule, Severity.Error, $"this {text[i]} closes nothing", new SourceSpan(file, i, 1))
                    {
                        Help = "leave it out",
                        Fixes = [new("leave it out", [new(new SourceSpan(file, i, 1), "")])],
                    };
            }
        }

        return open.TryPeek(out var left)
            ? new(SyntaxTree.Rule, Severity.Error, $"this {text[left]} is never closed", new SourceSpan(file, left, 1)) { Help = $"put a {(text[left] == '[' ? ']' : '}')} where it ends" }
            : null;
    }

    private static bool BeginsScalar(string text, int i, int start)
    {
        var before = i - 1;
        while (before >= start && text[before] is ' ' or '\t')
        {
            before--;
        }

        return before < start || text[before] is '\n' or '\r' or ',' or '[' or '{' || (text[before] is ':' or '-' && before < i - 1);
    }

    private static Finding? SpaceMissing(SourceFile file, string text, int start, int end, string message)
    {
        if (!message.Contains("invalid mapping", StringComparison.Ordinal) && !message.Contains("expected ':'", StringComparison.Ordinal) && !message.Contains("expected key", StringComparison.Ordinal))
        {
            return null;
        }

        for (var line = file.LineAt(start); line <= file.LineCount && file.LineStart(line) < end; line++)
        {
            var at = Math.Max(file.LineStart(line), start);
            var words = text.AsSpan(at, Math.Max(0, Math.Min(file.LineStart(line) + file.Line(line).Length, end) - at));
            var own = Lines.Indentation(words);
            var length = 0;
            while (own + length < words.Length && (char.IsLetterOrDigit(words[own + length]) || words[own + length] is '-' or '_'))
            {
                length++;
            }

            var colon = own + length;
            if (length > 0 && colon + 1 < words.Length && words[colon] == ':' && !char.IsWhiteSpace(words[colon + 1]) && words[colon + 1] is not ('/' or ':'))
            {
                var all = words.TrimEnd().Length - own;
                return NodeReader.MissingSpaceAt(new SourceSpan(file, at + own, all), new SourceSpan(file, at + colon + 1, 0), words.Slice(own, length).ToString());
            }
        }

        return null;
    }

    /// <summary>YamlDotNet's sentences in the words of somebody who has never heard of a scanner.</summary>
    private static (string Message, string Help) Reword(string message, SourceSpan at, string text)
    {
        bool Says(string part) => message.Contains(part, StringComparison.Ordinal);
        if (Says("Block sequence entries are not allowed") || Says("Anchor before sequence entry"))
        {
            return ("a list cannot begin behind a key on the same line", "put each \"- \" on a line of its own below the key, or write [one, two]; text that is a dash goes in quotes");
        }

        if (Says("invalid mapping") || Says("Mapping values are not allowed") || Says("Mapping keys are not allowed"))
        {
            return ("a second colon stands in this value, or this line is indented wrongly", "put the text in quotes if the colon belongs to it; otherwise give the key a line of its own, indented like its neighbors");
        }

        if (Says("expected key") || Says("expected '-' indicator") || Says("<document ") || Says("belongs to nothing"))
        {
            return ("this line fits nothing before it: it is indented differently from its neighbors, or its colon is missing", "indent it like the entries beside it, and write key: value");
        }

        var character = at.Start < text.Length && !char.IsControl(text[at.Start]) && !char.IsWhiteSpace(text[at.Start]) ? text[at.Start].ToString() : "";
        if (Says("node content") || Says("expected token"))
        {
            return character.Length == 0
                ? ("a value is expected here, and there is none", "write the value")
                : ($"a value is expected here, and {character} begins none", "write the value, or put it in quotes if it begins like that");
        }

        if (Says("cannot start any token"))
        {
            return ($"a text cannot begin with {(character.Length == 0 ? "what stands here" : character)}", "put the text in quotes");
        }

        if (Says("flow mapping") || Says("flow sequence") || Says("flow entry"))
        {
            return ("a comma or the closing bracket is missing here", "entries within brackets are parted by commas: { a: 1, b: 2 }");
        }

        if (Says("escape") || Says("hexadecimal") || Says("surrogates"))
        {
            return ("a backslash within double quotes begins an escape, and this one is none", "use single quotes, or write the backslash twice");
        }

        if (Says("quoted scalar"))
        {
            return ("this text in quotes does not end where it should", "put the closing quotation mark on the same line");
        }

        if (Says("could not find expected ':'"))
        {
            return ("this line has no colon, so it is neither a key nor a value", "write key: value");
        }

        if (Says("anchor") || Says("alias"))
        {
            return ("& and * at the beginning name a value in YAML, and this is no such name", "put the text in quotes");
        }

        if (Says("tag"))
        {
            return ("! at the beginning marks a tag in YAML, which a spec does not use", "put the text in quotes");
        }

        if (Says("block scalar"))
        {
            return ("the text below | or > does not begin as it should", "write | alone behind the colon, and indent every line of the text alike");
        }

        if (Says("comment"))
        {
            return ("a comment stands where it cannot", "put the comment on a line of its own, with a space before its #");
        }

        return message.StartsWith("While ", StringComparison.Ordinal) || Says("Operation is not valid") || Says("xpected")
            ? ("this cannot be read: a colon, a comma, a bracket or the indentation is wrong here or just before", "compare it with its neighbors: key: value, two spaces deeper for what belongs below")
            : (message, "compare it with its neighbors: key: value, two spaces deeper for what belongs below");
    }
}
