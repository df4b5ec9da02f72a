using System.Globalization;
using System.Text;
using WireSketch.Diagnostics;

namespace WireSketch.Documents.Findings;

/// <summary>Findings as one line each: for editors, and as commands that the runners of GitHub turn into annotations.</summary>
public static class FindingLines
{
    /// <summary><c>file:line:column: severity[id]: sentence</c>.</summary>
    public static string Short(FindingsReport report)
    {
        var text = new StringBuilder();
        foreach (var f in report.All)
        {
            text.Append(
                CultureInfo.InvariantCulture,
                $"{OneLine(report.NameOf(f.At.File))}:{f.At.Line}:{f.At.Column}: {FindingsReport.Word(f.Severity)}[{f.Rule}]: "
                    + $"{OneLine(f.Message)}");
            text.Append(f.AcceptedBecause is { } why ? $" (accepted: {OneLine(why)})\n" : "\n");
        }

        return text.ToString();
    }

    /// <summary>
    /// Workflow commands, worst first, since a step shows only the first ten of each level; words from a spec cannot become commands of
    /// their own.
    /// </summary>
    public static string GitHub(FindingsReport report)
    {
        var text = new StringBuilder();
        foreach (var f in report.All.Where(f => f.AcceptedBecause is null).OrderByDescending(f => f.Severity))
        {
            var command = f.Severity switch { Severity.Error => "error", Severity.Warning => "warning", _ => "notice" };
            text.Append(
                CultureInfo.InvariantCulture,
                $"::{command} "
                    + $"file={Property(report.NameOf(f.At.File))},line={f.At.Line},endLine={f.At.EndLine},col={f.At.Column},endColumn={f.At.EndColumn},title={Property(f.Rule)}::");
            text.Append(Data(f.Help is { } help ? $"{f.Message} Help: {help}" : f.Message)).Append('\n');
        }

        return text.ToString();
    }

    /// <summary>Words with whatever would break or disguise a line shown as escapes.</summary>
    public static string OneLine(string words)
    {
        var text = new StringBuilder(words.Length);
        for (var i = 0; i < words.Length; i++)
        {
            if (i + 1 < words.Length && char.IsSurrogatePair(words, i))
            {
                text.Append(words, i, 2);
                i++;
            }
            else if (IsPlain(words[i]))
            {
                text.Append(words[i]);
            }
            else
            {
                text.Append(CultureInfo.InvariantCulture, $"\\u{(int)words[i]:X4}");
            }
        }

        return text.ToString();
    }

    private static bool IsPlain(char c) => char.GetUnicodeCategory(c) is not (
        UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.Surrogate or UnicodeCategory.LineSeparator
            or UnicodeCategory.ParagraphSeparator);

    private static string Data(string words) =>
        words.Replace("%", "%25", StringComparison.Ordinal)
            .Replace("\r", "%0D", StringComparison.Ordinal)
            .Replace("\n", "%0A", StringComparison.Ordinal);

    private static string Property(string words) =>
        Data(words).Replace(":", "%3A", StringComparison.Ordinal).Replace(",", "%2C", StringComparison.Ordinal);
}
