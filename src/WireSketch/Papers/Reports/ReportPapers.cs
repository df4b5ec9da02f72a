using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WireSketch.Papers.Findings;

namespace WireSketch.Papers.Reports;

/// <summary>The calculation report for people and for programs.</summary>
internal static class ReportPapers
{
    private const int Version = 1;

    private static readonly ReportContext Context = new(new JsonSerializerOptions(FindingsJson.Options));

    public static Paper ForPeople(PaperHead head, CalculationReport report)
    {
        var paper = head.Begin("Calculation report").Heading(2, "Cautions").List(Cautions.ForTechnicians)
            .Paragraph("Each chapter says how it is computed; each line names what went in, where that comes from, and what came out. Lines are lines of the spec. Numbers are shown to four digits; report.json has them all.");
        foreach (var chapter in report.Chapters.Where(c => !c.Results.IsEmpty))
        {
            paper.Heading(2, chapter.Title).List(chapter.Formulas).Table(new(
                [new("Of"), new("From"), new("Result")],
                [.. chapter.Results.Select(r => ImmutableArray.Create(
                    r.Subject, string.Join("; ", r.Inputs.Select(i => $"{i.Name} {(i.Words.Length == 0 ? "none" : i.Words)} ({i.Origin})")), string.Join("; ", r.Values.Select(v => $"{v.Name} = {v.Words}"))))]));
        }

        return paper.ToPaper("report.md");
    }

    public static Paper ForPrograms(PaperHead head, CalculationReport report) => Paper.OfText(
        "report.json", JsonSerializer.Serialize(new ReportDocument(Version, head.SpecName, head.Fingerprint, report.Chapters), Context.ReportDocument) + "\n");
}

internal sealed record ReportDocument(int Version, string Spec, string Fingerprint, ImmutableArray<Chapter> Chapters);

[JsonSerializable(typeof(ReportDocument))]
internal sealed partial class ReportContext : JsonSerializerContext;
