using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>Finds what a plain text must not hold: bytes that are no UTF-8, and characters that nobody can see.</summary>
internal static class PlainText
{
    /// <summary>More control characters than come along with copied text: this is something else than a text.</summary>
    private const int MostControls = 20;

    private const string NameTheSpec = "name the spec itself, a plain text; if this is it, save it as UTF-8 in your editor";

    // A reader of bytes leaves each that is no UTF-8 as half a character of this range.
    private const char FirstStrayByte = '\uDC80';
    private const char LastStrayByte = '\uDCFF';

    /// <summary>
    /// Reports such characters and gives the text with each replaced by a space, so that every place stays what it was; a byte that is no
    /// UTF-8 is read as Latin-1 meanwhile. Null if it is no text: that is one finding, and nothing else is to be said of it.
    /// </summary>
    internal static string? Check(SourceFile file, ImmutableArray<Finding>.Builder findings)
    {
        var text = file.Text;
        if (text.Contains('\0', StringComparison.Ordinal))
        {
            findings.Add(NoText(file));
            return null;
        }

        char[]? clean = null;
        var stray = new List<int>();
        var others = new List<Finding>();
        for (var i = 0; i < text.Length; i++)
        {
            if (char.IsHighSurrogate(text[i]) && i + 1 < text.Length && char.IsLowSurrogate(text[i + 1]))
            {
                i++;
                continue;
            }

            if (Trouble(text[i], i) is not { } trouble)
            {
                continue;
            }

            clean ??= text.ToCharArray();
            clean[i] = ' ';
            if (text[i] is >= FirstStrayByte and <= LastStrayByte)
            {
                stray.Add(i);
                clean[i] = (byte)text[i] >= 0xA0 ? (char)(byte)text[i] : ' ';
            }
            else if (i > 0 || text[i] != '\uFEFF')
            {
                var at = new SourceSpan(file, i, 1);
                others.Add(new(SyntaxTree.Rule, Severity.Error, $"here stands {trouble}", at)
                {
                    Help = "delete it; it cannot be seen, and often comes along when text is copied from elsewhere",
                    Fixes = [new("delete the character", [new(at, "")])],
                });
            }
        }

        if (others.Count > MostControls)
        {
            findings.Add(new(
                SyntaxTree.Rule,
                Severity.Error,
                $"this is no text: it holds {others.Count} characters that cannot be seen; the first stands here",
                others[0].At)
            { Help = NameTheSpec });
            return null;
        }

        findings.AddRange(others);
        if (stray.Count > 0)
        {
            findings.Add(NotUtf8(file, stray));
        }

        return clean is null ? text : new string(clean);
    }

    private static Finding NotUtf8(SourceFile file, List<int> stray)
    {
        var more = stray.Count == 1 ? "" : string.Create(CultureInfo.InvariantCulture, $", and {stray.Count - 1} more are none");
        return new(
            SyntaxTree.Rule,
            Severity.Error,
            $"the file is not UTF-8: the byte {(byte)file.Text[stray[0]]:X2} that stands here is no character of it{more}",
            new SourceSpan(file, stray[0], 1))
        {
            Help = "save the file as UTF-8 in your editor: it is written in another encoding, such as Windows-1252 or Latin-1",
        };
    }

    /// <summary>A text in UTF-16 has a NUL beside every plain letter; anything else with a NUL is no text.</summary>
    private static Finding NoText(SourceFile file)
    {
        var text = file.Text;
        var first = text.IndexOf('\0', StringComparison.Ordinal);
        var head = text.AsSpan(0, Math.Min(text.Length, 200));
        var even = 0;
        var odd = 0;
        for (var i = 0; i < head.Length; i++)
        {
            even += i % 2 == 0 && head[i] == '\0' ? 1 : 0;
            odd += i % 2 == 1 && head[i] == '\0' ? 1 : 0;
        }

        var at = new SourceSpan(file, first, 1);
        return head.Length > 2 && Math.Min(even, odd) == 0 && Math.Max(even, odd) * 3 > head.Length
            ? new(
                SyntaxTree.Rule,
                Severity.Error,
                "the file is UTF-16 without the mark that says so: every other character of it is a NUL",
                at)
            { Help = "save the file as UTF-8 in your editor" }
            : new(SyntaxTree.Rule, Severity.Error, "this is no text: here stands a NUL character", at) { Help = NameTheSpec };
    }

    private static string? Trouble(char c, int index) => c switch
    {
        '\t' or '\n' or '\r' => null,
        < ' ' or '\u007f' or (>= '\u0080' and <= '\u009f') => "the control character " + Code(c),
        '\u2028' or '\u2029' => $"the character {Code(c)}, which ends a line for some programs and not for others",
        '\uFEFF' when index == 0 => "a byte order mark",
        '\uFEFF' => "a byte order mark in the middle of the text",
        '\uFFFE' or '\uFFFF' => $"{Code(c)}, which is no character",
        _ when char.IsSurrogate(c) => $"half a character ({Code(c)}): the text is damaged",
        _ => null,
    };

    private static string Code(char c) => "U+" + ((int)c).ToString("X4", CultureInfo.InvariantCulture);
}
