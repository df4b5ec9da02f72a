using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>The parts of a page: margin, header, drawing area, footer.</summary>
/// <param name="Paper">The paper.</param>
/// <param name="Footer">What stands at the foot.</param>
/// <param name="FooterHeight">Room for it, at least its height.</param>
internal sealed record PagePlan(PaperSize Paper, Footer Footer, double FooterHeight)
{
    public const double Margin = 19;
    private const double HeaderHeight = 32;
    private const double FooterGap = 8;

    public static double InnerWidth(PaperSize paper) => paper.Width.Value - (2 * Margin);

    public double FooterTop => Paper.Height.Value - Margin - FooterHeight;

    /// <summary>Where the system is drawn.</summary>
    public Rect Area
    {
        get
        {
            Points top = Margin + HeaderHeight, bottom = FooterTop - FooterGap;
            return new(Margin, top, InnerWidth(Paper), bottom - top);
        }
    }

    /// <summary>The scale at which a layout fits, not above the largest.</summary>
    public double ScaleOf(SheetLayout layout)
    {
        var fit = Math.Min(Area.Width.Value / layout.Size.Width, Area.Height.Value / layout.Size.Height);
        return Math.Floor(Math.Min(fit, TextSizes.MostScale) * 1000) / 1000;
    }

    /// <summary>The frame of a layout: as large as it fits, in the middle of the area.</summary>
    public Frame FrameOf(SheetLayout layout)
    {
        var scale = ScaleOf(layout);
        return new(
            scale,
            new(
                Area.X + ((Area.Width - (Points)(layout.Size.Width * scale)) / 2),
                Area.Y + ((Area.Height - (Points)(layout.Size.Height * scale)) / 2)));
    }
}
