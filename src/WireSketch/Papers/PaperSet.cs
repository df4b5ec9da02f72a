using System.Collections.Immutable;
using WireSketch.Papers.Findings;
using WireSketch.Papers.Lists;
using WireSketch.Papers.Tables;
using WireSketch.Text;

namespace WireSketch.Papers;

/// <summary>Everything about an install that is written, not drawn.</summary>
/// <param name="Papers">The files, in the order in which they are named to the user.</param>
public sealed record PaperSet(ImmutableArray<Paper> Papers)
{
    /// <summary>Makes all papers of a compiled spec; of one that could not be understood, its findings alone.</summary>
    public static PaperSet From(Compilation result)
    {
        var report = new FindingsReport([result.File.Name], result.Findings, f => f.Name);
        if (result.Install is not { } install)
        {
            return new([Paper.OfText("findings.json", FindingsJson.Write(report, Fingerprint.Of(result.File, [])))]);
        }

        var fingerprint = Fingerprint.Of(result.File, install.Spec.Used);
        var cuts = CutList.From(install);
        var parts = PartsList.From(install, cuts);
        return new(
        [
            CsvPaper.Write("parts.csv", parts.ForSpreadsheet()), CsvPaper.Write("cuts.csv", cuts.ForSpreadsheet()),
            Paper.OfText("findings.json", FindingsJson.Write(report, fingerprint)),
        ]);
    }
}
