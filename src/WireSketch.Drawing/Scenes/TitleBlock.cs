using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>The title block at the lower right corner.</summary>
internal sealed class TitleBlock(TitleFacts facts, string sheet, int number, int count) : FooterBlock
{
    private const double Row = 20.5;

    public override double Width => 200;

    public override double Height => Row * 5;

    public override void Draw(Draft page, double x, double y)
    {
        var d = page.Inner();
        d.Rect(x, y, Width, Height, 0, new(d.Palette.Box, d.Palette.Ink, 1));
        var middle = x + (Width / 2);
        for (var row = 1; row < 5; row++)
        {
            d.Lines(Look.Line(d.Palette.Ink, 0.5), [x, y + (Row * row), x + Width, y + (Row * row)]);
        }

        d.Lines(Look.Line(d.Palette.Ink, 0.5), [middle, y + Row, middle, y + Height]);
        Cell(d, x, y, Width, "title", facts.Title, Tone.Strong);
        var job = GearWords.Join(facts.Reference, facts.Revision.Length > 0 ? "revision " + facts.Revision : "");
        (string, string)[] cells =
        [
            ("vehicle", facts.Vehicle), ("shop", facts.Shop), ("customer", facts.Customer), ("installer", facts.Installer),
            ("job", job), ("date", facts.Date), ("sheet", FormattableString.Invariant($"{number} of {count}, {sheet}")), ("spec", facts.Hash),
        ];
        for (var i = 0; i < cells.Length; i++)
        {
            Cell(d, i % 2 == 0 ? x : middle, y + (Row * (1 + (i / 2))), Width / 2, cells[i].Item1, cells[i].Item2, Tone.Plain);
        }

        page.Group("Title block", d, new Mark("data-title-block", FormattableString.Invariant($"{number} of {count}")));
    }

    private static void Cell(Draft d, double x, double y, double width, string label, string words, Tone tone)
    {
        d.Text(x + 4, y + 7.4, (Points)6, label, Tone.Quiet);
        Points size = tone == Tone.Strong ? 9 : 7.6;
        var line = LineBreaker.Break(words, width - 8, size, tone == Tone.Strong ? FontWeight.SemiBold : FontWeight.Regular, 1);
        d.Text(x + 4, y + 17, size, line.IsEmpty ? "–" : line[0], tone);
    }
}
