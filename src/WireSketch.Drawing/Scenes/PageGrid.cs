using System.Globalization;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// The squares by which one sheet names a place on another: letters from the top, numbers from the left (after ISO 5457).
/// </summary>
internal static class PageGrid
{
    private const int Columns = 8;
    private const int Rows = 6;

    public static string SquareOf(Point spot, PaperSize paper)
    {
        var column = Math.Clamp((int)(spot.X.Value * Columns / paper.Width.Value), 0, Columns - 1);
        var row = Math.Clamp((int)(spot.Y.Value * Rows / paper.Height.Value), 0, Rows - 1);
        return (char)('A' + row) + (column + 1).ToString(CultureInfo.InvariantCulture);
    }

    public static void Draw(ShapeBuilder page, PaperSize paper)
    {
        var (width, height) = (paper.Width.Value, paper.Height.Value);
        const double edge = 13;
        var tick = ShapeStyle.Line(page.Palette.Hairline, 0.6);
        for (var i = 0; i < Columns; i++)
        {
            var middle = width * (i + 0.5) / Columns;
            var words = (i + 1).ToString(CultureInfo.InvariantCulture);
            page.Text(middle, edge - 2, (Points)6, words, TextEmphasis.Quiet, TextAnchor.Middle);
            page.Text(middle, height - edge + 6.5, (Points)6, words, TextEmphasis.Quiet, TextAnchor.Middle);
            if (i > 0)
            {
                page.Lines(
                    tick,
                    [width * i / Columns, edge - 8, width * i / Columns, edge],
                    [width * i / Columns, height - edge, width * i / Columns, height - edge + 8]);
            }
        }

        for (var i = 0; i < Rows; i++)
        {
            var middle = (height * (i + 0.5) / Rows) + 2;
            var words = ((char)('A' + i)).ToString();
            page.Text(edge - 5, middle, (Points)6, words, TextEmphasis.Quiet, TextAnchor.Middle);
            page.Text(width - edge + 5, middle, (Points)6, words, TextEmphasis.Quiet, TextAnchor.Middle);
            if (i > 0)
            {
                page.Lines(
                    tick,
                    [edge - 8, height * i / Rows, edge, height * i / Rows],
                    [width - edge, height * i / Rows, width - edge + 8, height * i / Rows]);
            }
        }
    }
}
