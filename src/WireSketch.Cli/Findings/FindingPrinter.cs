using System.Globalization;
using System.Text;
using WireSketch.Diagnostics;
using WireSketch.Documents.Findings;
using WireSketch.Text;

namespace WireSketch.Cli.Findings;

/// <summary>Writes findings for people: the sentence, the place, the line with marks under what is meant, notes, and what to do.</summary>
internal sealed class FindingPrinter(TerminalColor color, Func<SourceFile, string> nameOf)
{
    /// <summary>More findings of one file than anybody reads: of these many the worst are shown.</summary>
    private const int MostOfAFile = 200;

    public string Print(IEnumerable<Finding> findings)
    {
        var text = new StringBuilder();
        foreach (var ofFile in findings.GroupBy(f => f.At.File))
        {
            var all = ofFile.ToArray();
            var shown = all.Length <= MostOfAFile ? all.ToHashSet<Finding>(ReferenceEqualityComparer.Instance)
                : all.OrderBy(f => f.AcceptedBecause is not null)
                    .ThenByDescending(f => f.Severity)
                    .Take(MostOfAFile)
                    .ToHashSet<Finding>(ReferenceEqualityComparer.Instance);
            foreach (var finding in all.Where(shown.Contains))
            {
                Print(text, finding);
                text.Append('\n');
            }

            if (all.Length > shown.Count)
            {
                text.Append(
                    CultureInfo.InvariantCulture,
                    $"{FindingLines.OneLine(nameOf(ofFile.Key))}: {all.Length - shown.Count} more findings are not shown; wiresketch "
                        + $"check --format short lists all\n\n");
            }
        }

        return text.ToString();
    }

    private void Print(StringBuilder text, Finding f)
    {
        var gutter = new string(
            ' ',
            f.Notes.Select(n => n.At?.Line ?? 1).Append(f.At.Line).Max().ToString(CultureInfo.InvariantCulture).Length);
        var head = $"{FindingsReport.Word(f.Severity)}[{f.Rule}]";
        text.Append(Paint(f.Severity, head)).Append(color.Bold(": " + FindingLines.OneLine(f.Message))).Append('\n');
        Place(text, gutter, "-->", f.At);
        Lines(text, gutter, f.At, '^', f.Severity, "");
        foreach (var note in f.Notes)
        {
            if (note.At is { } at)
            {
                if (!ReferenceEquals(at.File, f.At.File))
                {
                    Place(text, gutter, ":::", at);
                }

                Lines(text, gutter, at, '-', Severity.Advice, FindingLines.OneLine(note.Message));
            }
            else
            {
                Remark(text, gutter, "note", note.Message);
            }
        }

        if (f.AcceptedBecause is { } why)
        {
            Remark(text, gutter, "accepted", why);
        }

        if (f.Help is { } help)
        {
            Remark(text, gutter, "help", help);
        }
    }

    private void Place(StringBuilder text, string gutter, string arrow, SourceSpan at) =>
        text.Append(gutter)
            .Append(color.Gutter(arrow))
            .Append(CultureInfo.InvariantCulture, $" {FindingLines.OneLine(nameOf(at.File))}:{at.Line}:{at.Column}")
            .Append('\n');

    private void Lines(StringBuilder text, string gutter, SourceSpan at, char mark, Severity severity, string label)
    {
        var excerpt = Excerpt.Of(at);
        var number = at.Line.ToString(CultureInfo.InvariantCulture).PadLeft(gutter.Length);
        text.Append(color.Gutter($"{gutter} |")).Append('\n');
        text.Append(color.Gutter($"{number} |")).Append(' ').Append(excerpt.Text).Append('\n');
        text.Append(color.Gutter($"{gutter} |"))
            .Append(' ', excerpt.Indent + 1)
            .Append(Paint(severity, new string(mark, excerpt.Marks) + (label.Length > 0 ? " " + label : "")))
            .Append('\n');
    }

    private void Remark(StringBuilder text, string gutter, string word, string says) =>
        text.Append(color.Gutter($"{gutter} ="))
            .Append(' ')
            .Append(color.Bold(word))
            .Append(": ")
            .Append(FindingLines.OneLine(says))
            .Append('\n');

    private string Paint(Severity severity, string words) => severity switch
    {
        Severity.Error => color.Error(words),
        Severity.Warning => color.Warning(words),
        _ => color.Advice(words),
    };
}
