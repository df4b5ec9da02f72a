using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;
using YamlDotNet.Core;

namespace WireSketch.Syntax;

/// <summary>Says in plain words what went wrong where YAML could not be read.</summary>
internal static class YamlMistakes
{
    internal const string Compare = "compare it with its neighbors: key: value, two spaces deeper for what belongs below";

    internal static Finding Explain(YamlMistakeException slip, SourceFile file, string text, int start, int end)
    {
        var at = slip.At;
        var (message, help, mayLackSpace) = slip.Says is { } says
            ? (says, Compare, false)
            : YamlMistake.At(file, text, start, end, at.Start);
        return LineSlips.In(file, text, start, end)
            ?? OpenBracket(file, text, start, end)
            ?? (mayLackSpace
                ? SpaceMissing(file, text, start, end)
                : null) ?? new(SyntaxTree.Rule, Severity.Error, message, at) { Help = help };
    }

    /// <summary>A line among keys that can be read but is no key with a value.</summary>
    internal static Finding NoKey(SourceFile file, string text, SyntaxNode node, int start, int end) =>
        SpaceMissing(file, text, start, end)
        ?? new(
            SyntaxTree.Rule,
            Severity.Error,
            "this line has no colon, so it is neither a key nor a value",
            node.At with
            {
                Length = Math.Min(node.At.Length, file.LineStart(node.At.Line) + file.Line(node.At.Line).Length - node.At.Start)
            })
        {
            Help = "write key: value",
        };

    internal static Finding Tabs(ImmutableArray<SourceSpan> tabs)
    {
        var more = tabs.Length == 1 ? "" : $"; {tabs.Length} lines of this entry have one";
        return new(SyntaxTree.Rule, Severity.Error, "a tab stands where a line is indented: only spaces may" + more, tabs[0])
        {
            Help = "put two spaces for each tab, and set your editor to write spaces in this file",
            Fixes = [
                new(
                    "put two spaces for each tab",
                    [.. tabs.Select(t => new Edit(t, t.Words.Replace("\t", "  ", StringComparison.Ordinal)))])
            ],
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
                        return new(
                            SyntaxTree.Rule, Severity.Error, "this quotation mark has no partner", new SourceSpan(file, first, 1))
                        {
                            Help = $"put another {quote} where the text ends"
                        };
                    }

                    break;
                case '[' or '{' when open.Count > 0 || BeginsScalar(text, i, start):
                    open.Push(i);
                    break;
                case ']' or '}' when open.TryPeek(out var last):
                    var right = text[last] == '[' ? ']' : '}';
                    if (text[i] != right)
                    {
                        return new(
                            SyntaxTree.Rule,
                            Severity.Error,
                            $"this {text[i]} does not fit the {text[last]} on line {file.LineAt(last)}",
                            new SourceSpan(file, i, 1))
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
            ? new(
                SyntaxTree.Rule, Severity.Error, $"this {text[left]} is never closed", new SourceSpan(file, left, 1))
            {
                Help = $"put a {(text[left] == '[' ? ']' : '}')} where it ends"
            }
            : null;
    }

    internal static bool BeginsScalar(string text, int i, int start)
    {
        var before = i - 1;
        while (before >= start && text[before] is ' ' or '\t')
        {
            before--;
        }

        return before < start || text[before] is '\n' or '\r' or ',' or '[' or '{' || (text[before] is ':' or '-' && before < i - 1);
    }

    /// <summary>A line of keys whose colon has no space behind it; only asked where the stretch could not be read.</summary>
    private static Finding? SpaceMissing(SourceFile file, string text, int start, int end)
    {
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
            if (length > 0
                && colon + 1 < words.Length
                && words[colon] == ':'
                && !char.IsWhiteSpace(words[colon + 1])
                && words[colon + 1] is not ('/' or ':'))
            {
                var all = words.TrimEnd().Length - own;
                return NodeReader.MissingSpaceAt(
                    new SourceSpan(file, at + own, all), new SourceSpan(file, at + colon + 1, 0), words.Slice(own, length).ToString());
            }
        }

        return null;
    }

}
