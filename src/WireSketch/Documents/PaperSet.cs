using System.Collections.Immutable;
using WireSketch.Documents.Findings;
using WireSketch.Documents.Formats;
using WireSketch.Documents.HandOver;
using WireSketch.Documents.Lists;
using WireSketch.Documents.Reports;
using WireSketch.Documents.SettingUp;
using WireSketch.Text;

namespace WireSketch.Documents;

/// <summary>Everything about an install that is written, not drawn.</summary>
/// <param name="Papers">The files, in the order in which they are named to the user.</param>
public sealed record PaperSet(ImmutableArray<Paper> Papers)
{
    /// <summary>Makes all papers of a compiled spec; of one that could not be understood, its findings alone.</summary>
    public static PaperSet From(PaperSource source)
    {
        var report = new FindingsReport([source.File.Name], source.Findings, f => f.Name);
        var findings = Paper.OfText("findings.json", FindingsJson.Write(report, Fingerprint.Of(source.File, source.Spec.Used)));
        if (source.Install is not { } install)
        {
            return new([findings, FindingsPaper.Write(new Markdown().Heading(1, $"Findings: {source.File.Name}"), report)]);
        }

        var head = PaperHead.Of(source, install);
        var cuts = CutList.From(install);
        var parts = PartsList.From(install, cuts);
        var calculations = CalculationReport.From(install);
        return new(
        [
            CsvPaper.Write("parts.csv", parts.ForSpreadsheet()),
            ListPapers.Parts(head, parts),
            CsvPaper.Write("cuts.csv", cuts.ForSpreadsheet()),
            ListPapers.Cuts(head, cuts),
            ReportPapers.ForPeople(head, calculations),
            ReportPapers.ForPrograms(head, calculations),
            SetupPaper.Write(head),
            HandOverPaper.Write(head, source.Findings),
            findings, FindingsPaper.Write(head.Begin("Findings"), report),
        ]);
    }
}
