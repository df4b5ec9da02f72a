using System.Text.RegularExpressions;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>
/// Slips that can be seen on a line by itself, looked for where a stretch could not be read: the parser stops behind them, often far.
/// </summary>
internal static partial class LineSlips
{
    /// <summary>The first such slip of a stretch; null if there is none.</summary>
    internal static Finding? In(SourceFile file, string text, int start, int end)
    {
        var above = "";
        for (var line = file.LineAt(start); line <= file.LineCount && file.LineStart(line) < end; line++)
        {
            var at = Math.Max(file.LineStart(line), start);
            var words = text[at..Math.Max(at, Math.Min(file.LineStart(line) + file.Line(line).Length, end))];
            if (words.Trim().Length == 0 || words.TrimStart()[0] == '#')
            {
                continue;
            }

            var found = HardSpace(file, words, at)
                ?? NoColon(file, words, at)
                ?? TooDeep(file, words, at, above)
                ?? Star(file, words, at)
                ?? Remark(file, words, at)
                ?? Semicolon(file, words, at)
                ?? NoComma(file, words, at)
                ?? Percent(file, words, at);
            if (found is not null)
            {
                return found;
            }

            above = words;
        }

        return null;
    }

    private static Finding? HardSpace(SourceFile file, string words, int at)
    {
        var blanks = words.TakeWhile(char.IsWhiteSpace).Count();
        var hard = words.AsSpan(0, blanks).IndexOfAnyExcept(' ', '\t');
        return hard < 0 ? null : Slip(
            file,
            at + hard,
            1,
            "a hard space stands where a line is indented: it looks like a space and is none",
            "type a plain space in its place",
            " ");
    }

    private static Finding? NoColon(SourceFile file, string words, int at) => IdAndBrace().Match(words) is { Success: true } m
        ? Slip(
            file,
            at + m.Groups[1].Index,
            m.Groups[1].Length,
            $"a colon is missing behind {m.Groups[1].Value}",
            $"write {m.Groups[1].Value}: {m.Groups[2].Value}",
            m.Groups[1].Value + ":")
        : null;

    /// <summary>Deeper than a line that has a value already.</summary>
    private static Finding? TooDeep(SourceFile file, string words, int at, string above)
    {
        var (own, before) = (Lines.Indentation(words), Lines.Indentation(above));
        return own > before && KeyAndValue().IsMatch(words) && KeyAndValue().IsMatch(above) && !Open().IsMatch(above)
            ? Slip(
                file,
                at + own,
                1,
                "this line is indented deeper than the one above it, which has a value already",
                $"indent it by {before} spaces, like its neighbors",
                null)
            : null;
    }

    private static Finding? Star(SourceFile file, string words, int at) => StarText().Match(words) is { Success: true } m
        ? Slip(
            file,
            at + m.Groups[1].Index,
            m.Groups[1].Length,
            $"a text that begins with {m.Groups[1].Value[0]} is a name of YAML",
            "put the text in quotes",
            $"\"{m.Groups[1].Value}\"")
        : null;

    /// <summary>A # that cuts a value off within braces, so that they are never closed.</summary>
    private static Finding? Remark(SourceFile file, string words, int at)
    {
        if (EmptyBeforeRemark().Match(words) is not { Success: true } m || !words[..m.Index].Contains('{', StringComparison.Ordinal))
        {
            return null;
        }

        var gauge = m.Groups[2].Value;
        return Slip(
            file,
            at + m.Groups[1].Index,
            words.Length - m.Groups[1].Index,
            "# begins a remark: nothing behind it on this line is read",
            gauge.Length > 0 ? $"write {gauge} AWG" : "put a text with # in quotes",
            null);
    }

    private static Finding? Semicolon(SourceFile file, string words, int at) =>
        InBraces(words, SemicolonBetween()) is { } m
            ? Slip(file, at + m.Groups[1].Index, 1, "a semicolon stands between two entries", "put a comma in its place", ",")
            : null;

    private static Finding? NoComma(SourceFile file, string words, int at) => InBraces(words, TwoColons()) is { } m
        ? Slip(
            file,
            at + m.Groups[1].Index,
            m.Groups[1].Length,
            $"a comma is missing before {m.Groups[1].Value}",
            "entries within braces are parted by commas: { a: 1, b: 2 }",
            $", {m.Groups[1].Value}")
        : null;

    private static Finding? Percent(SourceFile file, string words, int at) => PercentFirst().Match(words) is { Success: true } m
        ? Slip(
            file,
            at + m.Groups[1].Index,
            m.Groups[1].Length,
            "a value cannot begin with %",
            $"write {m.Groups[2].Value} %",
            $"{m.Groups[2].Value} %")
        : null;

    /// <summary>The first match behind an opening brace, outside quotes and remarks.</summary>
    private static Match? InBraces(string words, Regex what)
    {
        var brace = words.IndexOf('{', StringComparison.Ordinal);
        var plain = Quoted().Replace(words, q => new string('"', q.Length));
        plain = plain.IndexOf(" #", StringComparison.Ordinal) is >= 0 and var remark ? plain[..remark] : plain;
        return brace >= 0 && brace < plain.Length && what.Match(plain, brace) is { Success: true } m ? m : null;
    }

    private static Finding Slip(SourceFile file, int start, int length, string message, string help, string? better)
    {
        var at = new SourceSpan(file, start, length);
        return new(SyntaxTree.Rule, Severity.Error, message, at)
        {
            Help = help,
            Fixes = better is null ? [] : [new(help, [new(at, better)])],
        };
    }

    [GeneratedRegex(@"^ *(?:- +)?([\p{L}0-9][\p{L}0-9_-]*) *(\{.*)$")]
    private static partial Regex IdAndBrace();

    [GeneratedRegex(@"^ *[\p{L}0-9][\p{L}0-9_-]*: +[^\s#|>&{\[].*$")]
    private static partial Regex KeyAndValue();

    [GeneratedRegex(@"(?:""[^""]*|: *'[^']*)$")]
    private static partial Regex Open();

    [GeneratedRegex(@": +([*&](?=\S)[^,{}\[\]#]*[^,{}\[\]#\s])(?=\s*$)")]
    private static partial Regex StarText();

    [GeneratedRegex(@": +(#\s*([0-9]{1,2}\b)?.*)$")]
    private static partial Regex EmptyBeforeRemark();

    [GeneratedRegex(@"(;) *[\p{L}][\p{L}0-9_-]*: ")]
    private static partial Regex SemicolonBetween();

    [GeneratedRegex(@"[\p{L}][\p{L}0-9_-]*: +(?![\[{""',])[^,{}\[\]:]*[^,{}\[\]:\s]\s+([\p{L}][\p{L}0-9_-]*): ")]
    private static partial Regex TwoColons();

    [GeneratedRegex(@": +(%\s*([0-9]+(?:\.[0-9]+)?))")]
    private static partial Regex PercentFirst();

    [GeneratedRegex("\"[^\"]*\"|'[^']*'")]
    private static partial Regex Quoted();
}
