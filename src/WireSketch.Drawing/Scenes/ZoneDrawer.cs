using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// Draws the quiet columns of the zones and the walls between them. Columns fill the drawing area; the first and the last reach its
/// edges.
/// </summary>
internal sealed class ZoneDrawer(ShapeBuilder builder, Rect area, Spec spec, LoadColoring heat)
{
    private const double Gap = 1.6;

    public void Draw(SheetLayout layout)
    {
        var frame = builder.Frame;
        for (var i = 0; i < layout.Zones.Length; i++)
        {
            var zone = layout.Zones[i];
            var name = spec.Zones.FirstOrDefault(z => z.Id == zone.Id)?.DisplayName ?? zone.Id;
            var left = i == 0 ? area.X : frame.X(zone.Box.X + Gap);
            var right = i == layout.Zones.Length - 1 ? area.Right : frame.X(zone.Box.Right - Gap);
            var d = builder.Inner();
            d.Add(new RectShape(new(left, area.Y, right - left, area.Height), 4, ShapeStyle.Filled(d.Palette.OfZone(spec, zone.Id))));
            d.Add(new TextShape(
                new(left + 7, area.Y + 11),
                HeadingSize,
                TextAnchor.Start,
                [new(FontMetrics.Settable(name.ToUpperInvariant()), FontWeight.SemiBold, d.Palette.Quiet)],
                0.9));
            builder.Group(null, d, new ShapeAttribute("data-zone", zone.Id));
        }
    }

    public void DrawWalls(SheetLayout layout, ImmutableArray<SheetWire> wires, ImmutableArray<WireLink> links)
    {
        for (var i = 0; i < layout.Walls.Length; i++)
        {
            Wall(layout, i);
        }

        foreach (var wall in layout.Walls)
        {
            // Passes of one bundle that lie side by side share a ring.
            var group = new List<WallPass>();
            foreach (var pass in wall.Passes.OrderBy(p => p.At.Y))
            {
                if (group.Count > 0 && (pass.Bundle is null || pass.Bundle != group[^1].Bundle || pass.At.Y - group[^1].At.Y > 24))
                {
                    Pass([.. group], wires, links);
                    group.Clear();
                }

                group.Add(pass);
            }

            if (group.Count > 0)
            {
                Pass([.. group], wires, links);
            }
        }
    }

    private static Points HeadingSize => 7;

    private void Wall(SheetLayout layout, int index)
    {
        var wall = layout.Walls[index];
        var frame = builder.Frame;
        var (x, width) = (frame.X(wall.Box.X + 1), frame.Of(wall.Box.Width - 2));
        var box = new Rect(x, area.Y, width, area.Height);
        builder.Add(new RectShape(box, 0, new(builder.Palette.Box, builder.Palette.Hatch, 0.6)));
        builder.Add(Hatch(box));
        var firewall = spec.Zones.Any(z => z.Wall == ZoneWall.Firewall
            && layout.Zones.Any(p => p.Id == z.Id && p.Box.X < wall.Box.X));
        Name(box, wall, index == 0 && firewall ? "FIREWALL" : "WALL");
    }

    /// <summary>Strokes of 45° inside a narrow upright box.</summary>
    private PathShape Hatch(Rect box)
    {
        var steps = ImmutableArray.CreateBuilder<PathSegment>();
        for (var y = box.Y; y + box.Width <= box.Bottom; y += 5)
        {
            steps.Add(new(PathMove.Start, new(box.X, y + box.Width)));
            steps.Add(new(PathMove.Line, new(box.Right, y)));
        }

        return new(steps.ToImmutable(), new(null, builder.Palette.Hatch, 0.6));
    }

    /// <summary>The wall's name in the widest stretch that no wire crosses.</summary>
    private void Name(Rect box, PlacedWall wall, string words)
    {
        Points size = 6.4;
        var length = FontMetrics.Width(words, size, FontWeight.Regular, 0.8);
        var stops = wall.Passes.Select(p => builder.Frame.Y(p.At.Y)).Append(box.Y).Append(box.Bottom).Order().ToArray();
        var (top, bottom) = stops.Zip(stops.Skip(1)).OrderByDescending(s => s.Second - s.First).First();
        if (bottom - top < length + 24)
        {
            return;
        }

        var middle = top + ((bottom - top) / 2);
        builder.Add(new RectShape(
            new(box.X, middle - (length / 2) - 3, box.Width, length + 6),
            0,
            new(builder.Palette.Box, builder.Palette.Hatch, 0.6)));
        builder.Add(new TextShape(
            new(box.X + (box.Width / 2) + 2.3, middle + (length / 2)),
            size,
            TextAnchor.Start,
            [new(words, FontWeight.Regular, builder.Palette.Quiet)],
            0.8,
            Upwards: true)
        {
            Marks = [new("data-box", $"{box.X + (box.Width / 2) + 2.3 - 5} {middle + (length / 2)} {length} {size}")],
        });
    }

    private void Pass(ImmutableArray<WallPass> passes, ImmutableArray<SheetWire> wires, ImmutableArray<WireLink> links)
    {
        var d = builder.Inner();
        var (top, bottom) = (passes.Min(p => p.At.Y), passes.Max(p => p.At.Y));
        var body = passes.Max(p => StrokeWidths.Body(Wire(p).Step).Value);
        var half = (body / 2) + 2.8;
        var x = passes[0].At.X;
        var known = passes[0].Bundle is not null || passes.All(p => Wire(p).IsBundle);
        d.Rect(
            x - half,
            top - half,
            half * 2,
            bottom - top + (half * 2),
            half,
            new(d.Palette.Box, d.Palette.Ink, 1.1, known ? default : (2, 1.6)));
        foreach (var pass in passes)
        {
            var wire = Wire(pass);
            var color = WireDrawer.ColorOf(wire, heat);
            d.Circle(pass.At.X, pass.At.Y, (StrokeWidths.Body(wire.Step).Value / 2) + 0.5, new(color, d.Palette.CasingOf(color), 0.6));
        }

        builder.Group(
            passes[0].Bundle ?? "through the wall",
            d,
            new ShapeAttribute("data-pass", string.Join(' ', passes.Select(p => Wire(p).Run).Distinct())));

        SheetWire Wire(WallPass pass) => wires[links.Select(l => l.Id).ToList().IndexOf(pass.Wire)];
    }
}
