using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;

namespace WireSketch.Drawing.Scenes;

/// <summary>The title block at the lower right corner.</summary>
internal sealed class TitleBlock(TitleFacts facts, string sheet, int number, int count) : FooterBlock
{
    private const double Row = 13.4;
    private const double TitleRow = 19;

    public override double Width => 174;

    public override double Height => TitleRow + (Row * 6);

    public override void Draw(ShapeBuilder page, double x, double y)
    {
        var d = page.Inner();
        d.Rect(x, y, Width, Height, 0, new(d.Palette.Box, d.Palette.Ink, 1));
        var job = GearDrawing.Join(facts.Reference, facts.Revision.Length > 0 ? "revision " + facts.Revision : "");
        (string Label, string Words)[][] rows =
        [
            [("vehicle", facts.Vehicle)],
            [("shop", GearDrawing.Join(facts.Shop, facts.Installer))],
            [("customer", facts.Customer)],
            [("job", job)],
            [("sheet", FormattableString.Invariant($"{number} of {count}, {sheet}"))], [("date", facts.Date), ("spec", facts.Hash)],
        ];
        var size = new[] { 9, 8.4, 7.8, 7.2 }.FirstOrDefault(s => FontMetrics.Width(facts.Title, s, FontWeight.SemiBold) <= Width - 8, 7.2);
        Cell(d, x, y + 13, Width, new("", facts.Title, size, FontWeight.SemiBold));
        for (var r = 0; r < rows.Length; r++)
        {
            var top = y + TitleRow + (Row * r);
            d.Lines(ShapeStyle.Line(d.Palette.Ink, 0.5), [x, top, x + Width, top]);
            var width = Width / rows[r].Length;
            for (var c = 0; c < rows[r].Length; c++)
            {
                Cell(d, x + (width * c), top + 9.4, width, new(rows[r][c].Label, rows[r][c].Words, 7.4, FontWeight.Regular));
                if (c > 0)
                {
                    d.Lines(ShapeStyle.Line(d.Palette.Ink, 0.5), [x + (width * c), top, x + (width * c), top + Row]);
                }
            }
        }

        page.Group("Title block", d, new ShapeAttribute("data-title-block", FormattableString.Invariant($"{number} of {count}")));
    }

    private static void Cell(ShapeBuilder d, double x, double y, double width, CellText text)
    {
        var (label, words, size, weight) = text;
        d.Text(x + 4, y, (Points)6.2, label, TextEmphasis.Quiet);
        var indent = label.Length == 0 ? 4 : label is "spec" ? 22 : 34;
        var line = LineBreaker.Break(words, width - indent - 3, size, weight, 1);
        d.Text(x + indent, y, size, line.IsEmpty ? "–" : line[0], weight == FontWeight.SemiBold ? TextEmphasis.Strong : TextEmphasis.Plain);
    }

    private readonly record struct CellText(string Label, string Words, Points Size, FontWeight Weight);
}
