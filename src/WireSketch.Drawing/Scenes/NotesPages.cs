using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>Pages of text at the end: an index of the sheets, and every finding in full, in two columns.</summary>
internal sealed class NotesPages
{
    private const double Gap = 24;
    private const double Size = 7.6;
    private const double Leading = 10.4;
    private readonly List<Column> columns = [];
    private readonly PaperSize paper;
    private readonly double width;
    private readonly double height;

    /// <summary>Sets the text; how many pages it takes is known from then on.</summary>
    /// <param name="paper">The paper.</param>
    /// <param name="sheets">Names of the sheets that come before, and what they show; empty for no index.</param>
    /// <param name="findings">The findings.</param>
    public NotesPages(PaperSize paper, ImmutableArray<(string Name, string Shows)> sheets, ImmutableArray<Numbered> findings)
    {
        this.paper = paper;
        width = (PagePlan.InnerWidth(paper) - Gap) / 2;
        height = paper.Height.Value - (2 * PagePlan.Margin) - 48 - 112;
        columns.Add(new());
        if (!sheets.IsEmpty)
        {
            Put(14, (d, x, y) => Heading(d, x, y, "SHEETS"));
            for (var i = 0; i < sheets.Length; i++)
            {
                var (number, sheet) = (FormattableString.Invariant($"{i + 1}"), sheets[i]);
                Entry(
                    [sheet.Name, .. LineBreaker.Break(sheet.Shows, width - 22, Size)],
                    (d, x, y) => d.Text(x + 8, y + 7.4, (Points)Size, number, TextEmphasis.Strong, TextAnchor.Middle));
            }
        }

        if (!findings.IsEmpty)
        {
            Put(18, (d, x, y) => Heading(d, x, y + 4, "FINDINGS"));
            foreach (var finding in findings)
            {
                var help = finding.Finding.Help is { } h ? LineBreaker.Break("→ " + DeviceLabels.WithUnits(h), width - 22, Size) : [];
                Entry(
                    [
                        .. LineBreaker.Break(DeviceLabels.WithUnits(NotesBlock.Said(finding.Finding)), width - 22, Size),
                        .. help,
                        finding.Finding.Rule
                    ],
                    (d, x, y) => Marker.Draw(d, finding, x + 8, y + 4.6),
                    quietLast: true);
            }
        }
    }

    public int Count => (columns.Count + 1) / 2;

    /// <summary>Draws the n-th page, from 0.</summary>
    public Scene Draw(int page, TitleFacts facts, DrawingOptions options, ImmutableArray<Numbered> findings, int number, int count)
    {
        var builder = new ShapeBuilder(Frame.Page, Palette.Of(options.Theme));
        const string name = "Index and findings";
        SheetHeader.Draw(
            builder,
            facts,
            FormattableString.Invariant($"sheet {number}: {name}"),
            null,
            findings,
            PagePlan.InnerWidth(paper));
        for (var i = page * 2; i < Math.Min(columns.Count, (page * 2) + 2); i++)
        {
            foreach (var (y, draw) in columns[i].Parts)
            {
                draw(builder, PagePlan.Margin + (i % 2 * (width + Gap)), PagePlan.Margin + 44 + y);
            }
        }

        var footer = new Footer(
            PagePlan.InnerWidth(paper),
            new CautionBlock(options.Audience, 240),
            new TitleBlock(facts, name, number, count));
        footer.Draw(builder, PagePlan.Margin, paper.Height.Value - PagePlan.Margin - footer.Height);
        return new()
        {
            Name = name,
            Title = FormattableString.Invariant($"{facts.Title}: {name}, sheet {number} of {count}"),
            Description = FormattableString.Invariant($"{findings.Length} findings."),
            Width = paper.Width,
            Height = paper.Height,
            Paper = builder.Palette.Paper,
            Shapes = builder.Shapes,
        };
    }

    private static void Heading(ShapeBuilder d, double x, double y, string words) =>
        d.Text(x, y + 7, (Points)7, new TextLine([new(words, TextEmphasis.Quiet)]), TextAnchor.Start, 1);

    private void Entry(ImmutableArray<string> lines, Action<ShapeBuilder, double, double> mark, bool quietLast = false) =>
        Put((lines.Length * Leading) + 4, (d, x, y) =>
        {
            mark(d, x, y);
            for (var i = 0; i < lines.Length; i++)
            {
                var emphasis = quietLast ? (i == lines.Length - 1 ? TextEmphasis.Quiet : TextEmphasis.Plain)
                    : i == 0 ? TextEmphasis.Strong
                    : TextEmphasis.Quiet;
                d.Text(x + 22, y + 7.4 + (i * Leading), (Points)Size, lines[i], emphasis);
            }
        });

    private void Put(double needs, Action<ShapeBuilder, double, double> draw)
    {
        if (columns[^1].Used + needs > height && columns[^1].Parts.Count > 0)
        {
            columns.Add(new());
        }

        columns[^1].Parts.Add((columns[^1].Used, draw));
        columns[^1].Used += needs;
    }

    private sealed class Column
    {
        public List<(double Y, Action<ShapeBuilder, double, double> Draw)> Parts { get; } = [];

        public double Used { get; set; }
    }
}
