using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Tests.Layout;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>What a drawing of a graph comes to. Sums over several drawings are drawings too.</summary>
/// <param name="Drawings">How many drawings.</param>
/// <param name="Broken">Breaches of each law, by <see cref="LayoutLaws.Law"/>.</param>
/// <param name="Crossings">Crossings of stretches of different wires.</param>
/// <param name="Polylines">Polylines: one for each end of a wire beyond the first.</param>
/// <param name="Bends">Corners of all polylines.</param>
/// <param name="Length">Length of all polylines, in units.</param>
/// <param name="Direct">What it would be if each went straight across and straight down.</param>
/// <param name="Text">Least size of a label's text with the drawing fitted to the page, in points.</param>
/// <param name="Seconds">Time for laying out.</param>
internal sealed record Figures(
    int Drawings, int[] Broken, long Crossings, long Polylines, long Bends, double Length, double Direct, double Text, double Seconds)
{
    private const double TextHeight = 7.25;

    public double BendsPerRun => Polylines == 0 ? 0 : (double)Bends / Polylines;

    public double Detour => Direct == 0 ? 1 : Length / Direct;

    public static Figures None { get; } = new(0, new int[7], 0, 0, 0, 0, 0, double.PositiveInfinity, 0);

    /// <summary>Measures a drawing.</summary>
    /// <param name="graph">What it draws.</param>
    /// <param name="sheet">The drawing, in units times <paramref name="scale"/>.</param>
    /// <param name="options">Its page.</param>
    /// <param name="own">It is ours, so that the rules for our own drawings hold too.</param>
    /// <param name="scale">Its units to one unit.</param>
    /// <param name="seconds">Time it took.</param>
    public static Figures Of(SheetGraph graph, SheetLayout sheet, LayoutOptions options, bool own, int scale, double seconds)
    {
        int[] broken = new int[7];
        foreach (var fault in own ? LayoutLaws.Broken(graph, sheet) : LayoutLaws.BrokenByAny(graph, sheet))
        {
            broken[(int)fault.Law]++;
        }

        long bends = 0, length = 0, direct = 0;
        var polylines = sheet.Wires.SelectMany(w => w.Polylines).ToArray();
        foreach (var c in polylines)
        {
            bends += c.Length - 2;
            direct += Math.Abs(c[^1].X - c[0].X) + Math.Abs(c[^1].Y - c[0].Y);
            for (int i = 1; i < c.Length; i++)
            {
                length += Math.Abs(c[i].X - c[i - 1].X) + Math.Abs(c[i].Y - c[i - 1].Y);
            }
        }

        double text = TextHeight
            * scale
            * Math.Min((double)options.PageWidth / sheet.Size.Width, (double)options.PageHeight / sheet.Size.Height);
        return new(
            1, broken, LayoutLaws.Crossings(sheet), polylines.Length, bends, (double)length / scale, (double)direct / scale, text, seconds);
    }

    public static Figures operator +(Figures a, Figures b) => new(
        a.Drawings + b.Drawings,
        [.. a.Broken.Zip(b.Broken, (x, y) => x + y)],
        a.Crossings + b.Crossings,
        a.Polylines + b.Polylines,
        a.Bends + b.Bends,
        a.Length + b.Length, a.Direct + b.Direct, Math.Min(a.Text, b.Text), a.Seconds + b.Seconds);
}
