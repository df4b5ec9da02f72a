using System.Collections.Immutable;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;

namespace WireSketch.Drawing.Scenes;

/// <summary>A sheet with its parts in their places, on its page.</summary>
internal sealed record SheetPage(Sheet Sheet, SheetLayout Layout, PagePlan Page, ImmutableArray<Numbered> Findings)
{
    public Frame Frame => Page.FrameOf(Layout);

    public double Scale => Page.ScaleOf(Layout);

    /// <summary>Square in which a run goes on to another sheet; null if the sheet does not cut it.</summary>
    public string? SquareOf(string run)
    {
        var at = Sheet.Devices.Select((d, i) => (d.Reference, Place: Layout.Devices[i])).FirstOrDefault(d => d.Reference == run).Place;
        return at is null ? null : PageGrid.SquareOf(Frame.At(at.Box.X, at.Box.Y), Page.Paper);
    }
}

/// <summary>What all sheets of a set have in common.</summary>
internal sealed record SheetSet
{
    /// <summary>The system drawn.</summary>
    public required Spec Spec { get; init; }

    /// <summary>What every sheet says about the job.</summary>
    public required TitleFacts Facts { get; init; }

    /// <summary>For whom and how.</summary>
    public required DrawingOptions Options { get; init; }

    /// <summary>Computed numbers are shown.</summary>
    public required bool Computed { get; init; }

    /// <summary>How many sheets there are.</summary>
    public required int Count { get; init; }

    /// <summary>Some wire goes on from sheet to sheet, so that squares are named at the edges.</summary>
    public required bool Squares { get; init; }

    /// <summary>All findings.</summary>
    public required ImmutableArray<Numbered> Findings { get; init; }
}

/// <summary>Draws a sheet: zones, wires, devices, labels, then what stands around them.</summary>
internal sealed class SceneBuilder(SheetSet set)
{
    private readonly DrawingOptions options = set.Options;

    /// <summary>Draws one sheet.</summary>
    /// <param name="placed">The sheet.</param>
    /// <param name="number">Its number.</param>
    /// <param name="references">Where a cut run goes on, by its id.</param>
    public Scene Draw(SheetPage placed, int number, Func<string, Reference?> references)
    {
        var (sheet, layout, page, findings) = placed;
        var palette = Palette.Of(options.Theme);
        var whole = new ShapeBuilder(Frame.Page, palette);
        var builder = new ShapeBuilder(placed.Frame, palette);
        var zones = new ZoneDrawer(builder, page.Area, set.Spec, options.Heat);
        zones.Draw(layout);
        new WireDrawer(builder, options.Heat).Draw(sheet.Wires, sheet.Graph.Wires, layout.Wires);
        zones.DrawWalls(layout, sheet.Wires, sheet.Graph.Wires);
        var shown = options.Audience == Audience.Technician ? findings : [];
        var devices = new DeviceDrawer(builder, references);
        for (var i = 0; i < sheet.Devices.Length; i++)
        {
            devices.Draw(sheet.Devices[i], sheet.Graph.Devices[i], layout.Devices[i], Marks(shown, sheet.Devices[i].Subjects));
        }

        for (var i = 0; i < sheet.Wires.Length; i++)
        {
            LabelDrawer.Draw(builder, sheet.Wires[i], layout.Wires[i].Label, Marks(shown, [sheet.Wires[i].Run]));
        }

        whole.Add(builder.Shapes);
        Around(whole, placed, number);
        return new()
        {
            Name = sheet.Name,
            Title = FormattableString.Invariant($"{set.Facts.Title}: {sheet.Name}, sheet {number} of {set.Count}"),
            Description = Describe(sheet, findings),
            Width = page.Paper.Width,
            Height = page.Paper.Height,
            Paper = palette.Paper,
            Shapes = whole.Shapes,
        };
    }

    private void Around(ShapeBuilder whole, SheetPage placed, int number)
    {
        var page = placed.Page;
        if (set.Squares)
        {
            PageGrid.Draw(whole, page.Paper);
        }

        var state = set.Computed && options.Audience == Audience.Technician
            ? TitleFacts.Words(options.State, set.Spec.Gear.Any(g => g.Drawing.PlaysSound))
            : null;
        if (state is not null && options.Heat != LoadColoring.None && placed.Sheet.Wires.Any(w => w.HeatStep is not null))
        {
            state += "; " + ColorScale.Title(options.Heat);
        }

        SheetHeader.Draw(
            whole,
            set.Facts,
            set.Count > 1 ? FormattableString.Invariant($"sheet {number}: {placed.Sheet.Name}") : placed.Sheet.Name,
            state,
            set.Findings,
            PagePlan.InnerWidth(page.Paper));
        page.Footer.Draw(whole, PagePlan.Margin, page.FooterTop);
    }

    private static ImmutableArray<Numbered> Marks(ImmutableArray<Numbered> findings, ImmutableArray<string> subjects) =>
        [.. findings.Where(f => f.Finding.Subjects.Length > 0 && subjects.Contains(f.Finding.Subjects[0]))];

    private static string Describe(Sheet sheet, ImmutableArray<Numbered> findings)
    {
        var devices = sheet.Devices.Count(d => d.Reference is null);
        var runs = sheet.Wires.Where(w => !w.IsBundle).Select(w => w.Run).Distinct().Count();
        var bundles = sheet.Wires.Count(w => w.IsBundle);
        var wires = bundles > 0 ? FormattableString.Invariant($"{bundles} bundles of wires") : FormattableString.Invariant($"{runs} wires");
        var list = string.Join("; ", sheet.Wires.Select(w => w.AccessibleText).Distinct());
        return FormattableString.Invariant($"{devices} devices, {wires} and {findings.Length} findings. {list}.");
    }
}
