using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>Finds characters that nobody can see in a plain text and that a spec must not hold.</summary>
internal static class PlainText
{
    private const int MostReported = 20;

    /// <summary>Reports such characters and gives the text with each replaced by a space, so that every place stays what it was.</summary>
    internal static string Check(SourceFile file, ImmutableArray<Finding>.Builder findings)
    {
        char[]? clean = null;
        var count = 0;
        var text = file.Text;
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
            if (i == 0 && text[i] == '\uFEFF')
            {
                continue;
            }

            if (++count <= MostReported)
            {
                var at = new Span(file, i, 1);
                findings.Add(new(SyntaxTree.Rule, Severity.Error, $"here stands {trouble}", at)
                {
                    Help = "delete it; it cannot be seen, and often comes along when text is copied from elsewhere",
                    Fixes = [new("delete the character", [new(at, "")])],
                });
            }
        }

        return clean is null ? text : new string(clean);
    }

    private static string? Trouble(char c, int index) => c switch
    {
        '\t' or '\n' or '\r' => null,
        '\0' => "a NUL character: this may not be a text file",
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
