using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>The legend: only what its sheet uses, in two columns.</summary>
internal sealed class LegendBlock : FooterBlock
{
    private const double Row = 12.5;
    private const double Sample = 29;
    private readonly List<(string Words, Action<ShapeBuilder, double, double> Draw)> items = [];
    private readonly int rows;
    private readonly double[] columns;

    public LegendBlock(Sheet sheet, ImmutableArray<Numbered> findings, Audience audience, bool computed, LoadColoring heat)
    {
        // A heat scale is only of use on a sheet that has such wires.
        heat = sheet.Wires.Any(w => w.HeatStep is not null) ? heat : LoadColoring.None;
        foreach (var kind in sheet.Wires.Select(w => w.Kind).Distinct().Order())
        {
            var wire = sheet.Wires.First(w => w.Kind == kind) with { Step = 3, Colors = [], Origin = Origin.New };
            items.Add(
                (
                    $"{LabelDrawer.Letter(kind)}  {(audience == Audience.Customer ? LabelText.Plain(kind) : Words(kind))}",
                    (d, x, y) => Line(d, wire, x, y, heat)));
        }

        if (sheet.Devices.Any(d => d.InVehicle))
        {
            items.Add(
                (
                    "already in the vehicle",
                    (d, x, y) => d.Rect(x, y - 5, Sample - 6, 10, 3, new(d.Palette.Box, d.Palette.Ink, 1, (3.6, 2.6)))));
        }

        if (sheet.Wires.FirstOrDefault(w => w.InVehicle) is { } existing)
        {
            var wire = existing with { Step = 3, Colors = [] };
            items.Add(("wire already in the vehicle", (d, x, y) => Line(d, wire, x, y, heat)));
        }

        if (sheet.Devices.Any(d => d.Reference is not null))
        {
            items.Add(
                (
                    "goes on elsewhere",
                    (d, x, y) =>
                        d.Figure(new(d.Palette.Box, d.Palette.Quiet, 0.9), x, y - 5, x + 17, y - 5, x + 23, y, x + 17, y + 5, x, y + 5)));
        }

        if (sheet.Graph.Wires.Any(w => w.Bundle is not null && CrossesWall(sheet, w)) && sheet.Graph.Zones.Any(z => z.WallAfter))
        {
            items.Add(("grommet in the wall", (d, x, y) => d.Circle(x + 11.5, y, 4.6, new(d.Palette.Box, d.Palette.Ink, 1.1))));
        }

        if (sheet.Graph.Zones.Any(z => z.WallAfter)
            && sheet.Kind != SheetKind.Overview
            && sheet.Graph.Wires.Any(w => w.Bundle is null && CrossesWall(sheet, w)))
        {
            items.Add(
                ("hole, no grommet named", (d, x, y) => d.Circle(x + 11.5, y, 4.6, new(d.Palette.Box, d.Palette.Ink, 1.1, (2, 1.6)))));
        }

        if (audience == Audience.Technician && computed && !sheet.Wires.Any(w => w.IsBundle))
        {
            items.Add(("computed", (d, x, y) => d.Text(x, y + 2.6, Size, "13.8 V", TextEmphasis.Computed)));
        }

        foreach (var severity in findings.Select(f => f.Finding.Severity).Distinct().OrderDescending())
        {
            var finding = findings.First(f => f.Finding.Severity == severity);
            var accepted = finding.Finding.AcceptedBecause is null ? "" : ", accepted";
            items.Add((severity.ToString().ToLowerInvariant() + accepted, (d, x, y) => Marker.Draw(d, finding, x + 11.5, y)));
        }

        if (heat != LoadColoring.None)
        {
            AddHeat(heat);
        }
        else if (audience == Audience.Technician)
        {
            AddColors(sheet);
        }

        rows = Math.Max(6, (items.Count + 1) / 2);
        columns = [.. items.Chunk(rows).Select(c => c.Max(i => FontMetrics.Width(i.Words, Size).Value) + Sample + 10)];
    }

    public override double Width => columns.Sum() - 10;

    public override double Height => HeadingHeight + (Math.Min(rows, items.Count) * Row);

    public override void Draw(ShapeBuilder page, double x, double y)
    {
        Heading(page, x, y, "LEGEND");
        for (var i = 0; i < items.Count; i++)
        {
            var (left, middle) = (x + columns.Take(i / rows).Sum(), y + HeadingHeight + (i % rows * Row) + 4.5);
            items[i].Draw(page, left, middle);
            page.Text(left + Sample, middle + 2.6, Size, items[i].Words);
        }
    }

    /// <summary>The codes of the colors that labels use, a few to a row.</summary>
    private void AddColors(Sheet sheet)
    {
        var colors = sheet.Wires.SelectMany(w => w.LabelColors).Distinct().OrderBy(c => ConductorColor.All.IndexOf(c)).ToArray();
        foreach (var pair in colors.Chunk(2))
        {
            items.Add((string.Join(", ", pair.Select(c => $"{c.Code} {c.Name}")), (d, x, y) =>
            {
                for (var i = 0; i < pair.Length; i++)
                {
                    d.Rect(
                        x + (i * 13),
                        y - 4,
                        10.5,
                        8,
                        1.5,
                        new(new Color(pair[i].Red, pair[i].Green, pair[i].Blue), d.Palette.Quiet, 0.6));
                }
            }
            ));
        }
    }

    private void AddHeat(LoadColoring heat)
    {
        for (var i = 0; i < Palette.Heat.Length; i++)
        {
            var color = Palette.Heat[i];
            items.Add((ColorScale.Words(heat, i), (d, x, y) => d.Rect(x, y - 4, Sample - 6, 8, 1.5, new(color, d.Palette.Quiet, 0.6))));
        }
    }

    private static bool CrossesWall(Sheet sheet, Layout.WireLink wire)
    {
        var zones = sheet.Graph.Devices.Where(d => d.Ports.Any(p => p.Id == wire.From || wire.To.Contains(p.Id)))
            .Select(d => d.Zone)
            .ToArray();
        return Enumerable.Range(zones.Min(), zones.Max() - zones.Min()).Any(z => sheet.Graph.Zones[z].WallAfter);
    }

    private static string Words(RunKind kind) => kind switch
    {
        RunKind.Supply => "supply",
        RunKind.Ground => "ground",
        RunKind.Line => "line level",
        RunKind.Speaker => "speaker level",
        _ => "control",
    };

    private static void Line(ShapeBuilder d, SheetWire wire, double x, double y, LoadColoring heat)
    {
        ImmutableArray<PathSegment> path = [new(PathMove.Start, d.Frame.At(x, y)), new(PathMove.Line, d.Frame.At(x + Sample - 6, y))];
        d.Add(WireDrawer.Casing(d, wire, path, heat));
        d.Add(WireDrawer.Body(d, wire, path, heat));
    }
}
