using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>What a line of YAML looks like from its characters alone.</summary>
internal static class Lines
{
    /// <summary>The spaces at the start of a line.</summary>
    internal static int Indentation(ReadOnlySpan<char> line)
    {
        var i = 0;
        while (i < line.Length && line[i] == ' ')
        {
            i++;
        }

        return i < line.Length && line[i] is '\n' or '\r' ? line.Length : i;
    }

    /// <summary>A key with its colon and nothing behind it but a comment: its value stands on the lines below.</summary>
    internal static bool IsHeading(ReadOnlySpan<char> line)
    {
        var words = line.Trim();
        var comment = words.IndexOf(" #", StringComparison.Ordinal);
        words = (comment >= 0 ? words[..comment] : words).TrimEnd();
        return words.Length > 1 && words[^1] == ':' && words[0] is not ('-' or '#' or '[' or '{' or '?' or '&' or '*' or '!' or '|' or '>');
    }

    /// <summary>Every stretch of blanks at the start of a line that has a tab in it.</summary>
    internal static ImmutableArray<SourceSpan> TabsIn(SourceFile file, string text, int start, int end)
    {
        var found = ImmutableArray.CreateBuilder<SourceSpan>();
        for (var line = file.LineAt(start); line <= file.LineCount && file.LineStart(line) < end; line++)
        {
            var at = file.LineStart(line);
            var length = file.Line(line).Length;
            var blank = 0;
            while (blank < length && text[at + blank] is ' ' or '\t')
            {
                blank++;
            }

            var tab = text.AsSpan(at, blank).IndexOf('\t');
            if (tab >= 0 && blank < length && at + blank < end && at >= start)
            {
                found.Add(new SourceSpan(file, at + tab, blank - tab));
            }
        }

        return found.ToImmutable();
    }
}
