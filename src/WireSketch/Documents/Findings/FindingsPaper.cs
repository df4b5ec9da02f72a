using WireSketch.Diagnostics;
using WireSketch.Documents.Formats;

namespace WireSketch.Documents.Findings;

/// <summary>Findings for people who have no terminal before them.</summary>
internal static class FindingsPaper
{
    public static Paper Write(Markdown paper, FindingsReport report)
    {
        paper.Paragraph(Cautions.InShort).Paragraph($"{report.Summary()}.");
        Section(paper, "Errors", report.All.Where(f => f.Blocks), report);
        Section(paper, "Warnings", report.All.Where(f => f.Severity == Severity.Warning && f.AcceptedBecause is null), report);
        Section(paper, "Advice", report.All.Where(f => f.Severity == Severity.Advice && f.AcceptedBecause is null), report);
        Section(paper, "Accepted", report.All.Where(f => f.AcceptedBecause is not null), report);
        return paper.ToPaper("findings.md");
    }

    private static void Section(Markdown paper, string title, IEnumerable<Finding> findings, FindingsReport report)
    {
        var rows = findings.Select(f => System.Collections.Immutable.ImmutableArray.Create(
            $"{report.NameOf(f.At.File)}:{f.At.Line}",
            f.Rule,
            string.Join(" ", new[] { f.Message }.Concat(f.Notes.Select(n => $"({n.Message})"))),
            f.AcceptedBecause ?? f.Help ?? "")).ToArray();
        if (rows.Length > 0)
        {
            paper.Heading(2, title)
                .Table(new([new("Line"), new("Rule"), new("What"), new(title == "Accepted" ? "Because" : "What to do")], [.. rows]));
        }
    }
}
