using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>A column at the foot of a sheet: a heading and what is under it. Lengths are points.</summary>
internal abstract class FooterBlock
{
    public const double Size = 7.2;
    public const double Leading = 9.8;

    /// <summary>Height of the heading and the space under it.</summary>
    protected const double HeadingHeight = 15;

    public abstract double Width { get; }

    public abstract double Height { get; }

    public abstract void Draw(ShapeBuilder page, double x, double y);

    protected static void Heading(ShapeBuilder page, double x, double y, string words) =>
        page.Text(x, y + 7, (Points)7, new TextLine([new(words, TextEmphasis.Quiet)]), TextAnchor.Start, 1);

    /// <summary>Lines of a width; a number stays with its unit.</summary>
    protected static ImmutableArray<string> Lines(string text, double width) =>
        LineBreaker.Break(DeviceLabels.WithUnits(text), width, Size);
}

/// <summary>The cautions.</summary>
internal sealed class CautionBlock(Audience audience, double width) : FooterBlock
{
    private readonly ImmutableArray<ImmutableArray<string>> items = [.. SheetCautions.For(audience).Select(c => Lines(c, width - 8))];

    public override double Width => width;

    public override double Height => HeadingHeight + items.Sum(i => (i.Length * Leading) + 2);

    public override void Draw(ShapeBuilder page, double x, double y)
    {
        Heading(page, x, y, SheetCautions.Heading(audience));
        y += HeadingHeight;
        foreach (var item in items)
        {
            page.Circle(x + 1.6, y + 4.2, 1.1, ShapeStyle.Filled(page.Palette.Quiet));
            foreach (var line in item)
            {
                page.Text(x + 8, y + 6.8, Size, line);
                y += Leading;
            }

            y += 2;
        }
    }
}

/// <summary>The findings of a sheet, as far as they fit.</summary>
internal sealed class NotesBlock : FooterBlock
{
    private readonly List<(Numbered Finding, ImmutableArray<string> Lines)> shown = [];
    private readonly string more;

    /// <summary>Takes findings in order until the height is used up.</summary>
    public NotesBlock(ImmutableArray<Numbered> findings, double width, double height, int notesSheet)
    {
        Width = width;
        var left = height - HeadingHeight;
        foreach (var finding in findings)
        {
            var lines = Lines(Said(finding.Finding), width - 15);
            var reserve = shown.Count + 1 < findings.Length ? Leading : 0;
            if ((lines.Length * Leading) + 3 + reserve > left)
            {
                break;
            }

            shown.Add((finding, lines));
            left -= (lines.Length * Leading) + 3;
        }

        Hidden = findings.Length - shown.Count;
        more = Hidden == 0 ? ""
            : shown.Count == 0 ? FormattableString.Invariant($"{Hidden} findings: see sheet {notesSheet}")
            : FormattableString.Invariant($"and {Hidden} more: see sheet {notesSheet}");
    }

    public override double Width { get; }

    /// <summary>How many did not fit.</summary>
    public int Hidden { get; }

    public override double Height => HeadingHeight + shown.Sum(s => (s.Lines.Length * Leading) + 3) + (more.Length > 0 ? Leading : 0);

    public override void Draw(ShapeBuilder page, double x, double y)
    {
        Heading(page, x, y, "FINDINGS");
        y += HeadingHeight;
        foreach (var (finding, lines) in shown)
        {
            Marker.Draw(page, finding, x + Marker.Half, y + 4.4);
            foreach (var line in lines)
            {
                page.Text(x + 15, y + 6.8, Size, line);
                y += Leading;
            }

            y += 3;
        }

        page.Text(x + (shown.Count == 0 ? 0 : 15), y + 6.8, Size, more, TextEmphasis.Quiet);
    }

    /// <summary>A finding in a sentence, with what was said when it was accepted.</summary>
    public static string Said(Diagnostics.Finding finding) =>
        Capital(finding.Message)
            + (finding.AcceptedBecause is { } reason ? $" (accepted: {reason})" : finding.Message.EndsWith('.') ? "" : ".");

    private static string Capital(string text) =>
        text.Length == 0 ? text : string.Concat(char.ToUpperInvariant(text[0]).ToString(), text.AsSpan(1));
}
