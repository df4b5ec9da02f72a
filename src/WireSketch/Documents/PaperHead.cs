using System.Collections.Immutable;
using WireSketch.Documents.Formats;
using WireSketch.Installation;

namespace WireSketch.Documents;

/// <summary>What every paper begins with: which job it belongs to, which spec it was made from, and whether it may be built.</summary>
internal sealed record PaperHead(InstalledSystem Install, string SpecName, string Fingerprint, int Errors)
{
    public Markdown Begin(string title)
    {
        var job = Install.Spec.Job;
        var paper = new Markdown().Heading(1, job.Title is { } t ? $"{title}: {t.Value}" : title);
        if (Errors > 0)
        {
            paper.Paragraph(
                $"NOT FOR INSTALLATION: {(Errors == 1
                    ? "one error is"
                    : $"{PlainTable.Number(Errors)} errors are")} open in this spec. See findings.md.");
        }

        var facts = new (string Name, string? Words)[]
        {
            ("Vehicle", job.Vehicle.Description?.Value),
            ("Customer", job.Customer?.Value),
            ("Shop", job.Shop?.Value),
            ("Installer", job.Installer?.Value),
            ("Reference", job.Reference?.Value),
            ("Revision", job.Revision?.Value),
            ("Date", job.Date?.Value),
            ("Made from", $"{SpecName}, spec {WireSketch.Text.Fingerprint.ForPeople(Fingerprint)}"),
        };
        return paper.Table(new(
            [new("Job"), new("")],
            [.. facts.Where(f => f.Words is not null).Select(f => ImmutableArray.Create(f.Name, f.Words!))]));
    }

    public static PaperHead Of(PaperSource source, InstalledSystem install) =>
        new(
            install,
            source.File.Name,
            WireSketch.Text.Fingerprint.Of(source.File, install.Spec.Used),
            source.Findings.Count(f => f.Blocks));
}
