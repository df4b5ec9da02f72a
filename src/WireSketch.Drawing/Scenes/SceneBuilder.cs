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

/// <summary>Draws a sheet: zones, wires, devices, labels, then what stands around them.</summary>
internal sealed class SceneBuilder(
    Spec spec, TitleFacts facts, DrawingOptions options, bool computed, int count, bool squares, ImmutableArray<Numbered> all)
{
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
        var zones = new ZoneDrawer(builder, page.Area, spec, options.Heat);
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
        return new(
            sheet.Name,
            FormattableString.Invariant($"{facts.Title}: {sheet.Name}, sheet {number} of {count}"),
            Describe(sheet, findings),
            page.Paper.Width,
            page.Paper.Height,
            palette.Paper, whole.Shapes);
    }

    private void Around(ShapeBuilder whole, SheetPage placed, int number)
    {
        var page = placed.Page;
        if (squares)
        {
            PageGrid.Draw(whole, page.Paper);
        }

        var state = computed && options.Audience == Audience.Technician ? TitleFacts.Words(options.State, spec.Gear.Any(g => g.Drawing.PlaysSound)) : null;
        if (state is not null && options.Heat != LoadColoring.None && placed.Sheet.Wires.Any(w => w.HeatStep is not null))
        {
            state += "; " + ColorScale.Title(options.Heat);
        }

        SheetHeader.Draw(
            whole,
            facts,
            count > 1 ? FormattableString.Invariant($"sheet {number}: {placed.Sheet.Name}") : placed.Sheet.Name,
            state,
            all,
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
