using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>Looks at what YAML allows around a document: directives, and further documents.</summary>
internal static class Preamble
{
    /// <summary>Reports directives (and takes them out of the text) and further documents; gives where the first document ends.</summary>
    internal static int Check(SourceFile file, ref string text, ImmutableArray<Finding>.Builder findings)
    {
        var content = false;
        for (var line = 1; line <= file.LineCount; line++)
        {
            var start = file.LineStart(line);
            var length = file.Line(line).Length;
            var words = text.AsSpan(start, length);
            if (!content && words.StartsWith("%"))
            {
                findings.Add(new(
                    SyntaxTree.Rule,
                    Severity.Error,
                    "a line that begins with % is a directive of YAML, which a spec does not use",
                    new SourceSpan(file, start, length))
                {
                    Help = "leave the line out",
                    Fixes = [new("leave the line out", [new(new SourceSpan(file, start, length), "")])],
                });
                text = string.Concat(text.AsSpan(0, start), new string(' ', length), text.AsSpan(start + length));
                continue;
            }

            var marker = IsMarker(words, "---") || IsMarker(words, "...");
            if (content && marker)
            {
                if (MoreAfter(text, start + 3))
                {
                    findings.Add(new(
                        SyntaxTree.Rule,
                        Severity.Error,
                        "a second document begins here; a spec is one document",
                        new SourceSpan(file, start, 3))
                    {
                        Help = "put it into a file of its own; what follows was not read",
                    });
                }

                return start;
            }

            content |= !marker && words.TrimStart() is { Length: > 0 } rest && rest[0] != '#';
        }

        return text.Length;
    }

    private static bool IsMarker(ReadOnlySpan<char> line, string marker) =>
        line.StartsWith(marker) && (line.Length == 3 || line[3] is ' ' or '\t');

    private static bool MoreAfter(string text, int from) => text.AsSpan(from).Trim().Length > 0;
}
