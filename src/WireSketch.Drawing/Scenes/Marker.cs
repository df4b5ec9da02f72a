using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>The mark of a finding: its number in a shape and a color by severity, so that either alone tells.</summary>
internal static class Marker
{
    /// <summary>Half of its width and height, in units.</summary>
    public const double Half = 5.2;

    private const double Pitch = SheetMaker.MarkWidth - 1;

    /// <summary>Draws the marks of one thing side by side, as many as there is room for.</summary>
    /// <param name="d">Where to draw.</param>
    /// <param name="findings">What they mark.</param>
    /// <param name="x">The middle of the first.</param>
    /// <param name="y">Their middle.</param>
    /// <param name="run">The run in whose label they stand; null elsewhere.</param>
    public static void Draw(ShapeBuilder d, ImmutableArray<Numbered> findings, double x, double y, string? run = null)
    {
        foreach (var finding in findings.Take(SheetMaker.MostMarks))
        {
            Draw(d, finding, x, y, run);
            x += Pitch;
        }
    }

    /// <summary>Width of so many marks, in units.</summary>
    public static double Width(ImmutableArray<Numbered> findings) => SheetMaker.MarkRoom(findings.Length);

    /// <summary>Draws a mark around its middle.</summary>
    /// <param name="d">Where to draw.</param>
    /// <param name="finding">What it marks.</param>
    /// <param name="x">Its middle.</param>
    /// <param name="y">Its middle.</param>
    /// <param name="run">The run in whose label it stands; null elsewhere.</param>
    public static void Draw(ShapeBuilder d, Numbered finding, double x, double y, string? run = null)
    {
        var (color, accepted) = (Of(d.Palette, finding.Finding.Severity), finding.Finding.AcceptedBecause is not null);
        var style = accepted ? new ShapeStyle(d.Palette.Box, color, 1) : new ShapeStyle(color, color, 0.6);
        var ink = accepted ? color : d.Palette.OnMark;
        var inner = d.Inner();
        switch (finding.Finding.Severity)
        {
            case Severity.Error:
                const double cut = 2.2;
                inner.Figure(
                    style, x - Half, y - cut, x - cut, y - Half, x + cut, y - Half, x + Half, y - cut, x + Half, y + cut, x + cut,
                    y + Half, x - cut, y + Half, x - Half, y + cut);
                break;
            case Severity.Warning:
                inner.Figure(style, x - Half, y, x, y - Half - 0.8, x + Half, y, x, y + Half + 0.8);
                break;
            default:
                inner.Circle(x, y, Half, style);
                break;
        }

        var words = finding.Number.ToString(CultureInfo.InvariantCulture);
        inner.Add(new TextShape(
            inner.Frame.At(x, y + 2.5), TextSizes.Body * inner.Frame.Scale, TextAnchor.Middle, [new(words, FontWeight.SemiBold, ink)])
        {
            Marks = run is null ? [] : [new("data-part-of", run)],
        });
        d.Group(
            $"{finding.Finding.Severity}: {finding.Finding.Message}",
            inner,
            new ShapeAttribute("data-finding", words),
            new ShapeAttribute("data-rule", finding.Finding.Rule));
    }

    public static Color Of(Palette palette, Severity severity) => severity switch
    {
        Severity.Error => palette.Error,
        Severity.Warning => palette.Warning,
        _ => palette.Advice,
    };
}

/// <summary>A finding with its number on the drawing.</summary>
internal sealed record Numbered(int Number, Finding Finding);
