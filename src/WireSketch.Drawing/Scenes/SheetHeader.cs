using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>The head of a sheet: what it is, and in red whether it must not be built yet.</summary>
internal static class SheetHeader
{
    private const string Stamp = "NOT FOR INSTALLATION";

    public static void Draw(
        ShapeBuilder page, TitleFacts facts, string sheet, string? state, ImmutableArray<Numbered> findings, double width)
    {
        var blocking = findings.Where(f => f.Finding.Blocks).ToArray();
        var stamp = blocking.Length == 0 ? 0 : FontMetrics.Width(Stamp, 13, FontWeight.SemiBold, 0.6).Value + 20;
        var room = width - stamp - 20;
        var title = LineBreaker.Break(facts.Title, room, 15, FontWeight.SemiBold, 1);
        page.Text(PagePlan.Margin, PagePlan.Margin + 10, (Points)15, title.IsEmpty ? "" : title[0], TextEmphasis.Strong);
        var parts =
            new[]
            {
                sheet,
                facts.Vehicle,
                facts.Reference.Length > 0 ? "job " + facts.Reference : "",
                state is { } s ? "state shown: " + s : ""
            };
        var line = LineBreaker.Break(string.Join("  ·  ", parts.Where(p => p.Length > 0)), room, 8, FontWeight.Regular, 1);
        page.Text(PagePlan.Margin, PagePlan.Margin + 23, (Points)8, line.IsEmpty ? "" : line[0], TextEmphasis.Quiet);
        if (blocking.Length > 0)
        {
            Draw(page, blocking, PagePlan.Margin + width - stamp, stamp);
        }
    }

    private static void Draw(ShapeBuilder page, Numbered[] blocking, double x, double width)
    {
        var d = page.Inner();
        var red = page.Palette.Error;
        var numbers = string.Join(", ", blocking.Select(b => b.Number).Take(8)) + (blocking.Length > 8 ? ", …" : "");
        d.Rect(x, PagePlan.Margin - 6, width, 32, 3, new(page.Palette.Box, red, 1.8));
        d.Add(new TextShape(
            new(x + (width / 2) + 0.3, PagePlan.Margin + 9),
            13,
            TextAnchor.Middle,
            [new(Stamp, FontWeight.SemiBold, red)],
            0.6));
        d.Add(new TextShape(
            new(x + (width / 2), PagePlan.Margin + 20),
            7.4,
            TextAnchor.Middle,
            [
                new(
                    blocking.Length == 1 ? $"until error {numbers} is fixed or accepted" : $"until errors {numbers} are fixed or accepted",
                    FontWeight.Regular,
                    red)
            ]));
        page.Group("Not for installation", d, new ShapeAttribute("data-stamp", "not for installation"));
    }
}
