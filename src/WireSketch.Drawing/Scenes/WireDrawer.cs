using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// Draws wires in their own colors on a contrasting outline. All outlines of a net come before its bodies, so that no wire cuts
/// its own trunk; a stretch that several ways of one wire share is drawn once, so that dashes stay in step.
/// </summary>
internal sealed class WireDrawer(ShapeBuilder builder, LoadColoring heat)
{
    private const double Radius = 5;

    /// <summary>The net that stands at each run: of the two beside an inline fuse, the one that it shares with other runs.</summary>
    private readonly Dictionary<string, string> nets = new(StringComparer.Ordinal);

    public void Draw(ImmutableArray<SheetWire> wires, ImmutableArray<WireLink> links, ImmutableArray<RoutedWire> routes)
    {
        nets.Clear();
        foreach (var run in wires.GroupBy(w => w.Run, StringComparer.Ordinal))
        {
            nets[run.Key] = run.Select(w => w.Net.Length > 0 ? w.Net : w.Run)
                .OrderByDescending(n => wires.Count(w => w.Net == n && w.Run != run.Key))
                .First();
        }

        var all = wires.Select((w, i) => new Drawn(w, links[i], Polylines.Of(routes[i]), routes[i].Dots)).ToArray();
        // The thickest first, so that thin wires are never hidden at a crossing.
        foreach (var net in all.GroupBy(w => w.Link.Net, StringComparer.Ordinal).OrderByDescending(g => g.Max(w => w.Wire.Step)))
        {
            if (net.Select(w => w.Wire.Run).Distinct().Count() == 1)
            {
                foreach (var run in net.GroupBy(w => w.Wire.Run))
                {
                    Group([.. run], run.SelectMany(Casings).Concat(run.SelectMany(Bodies)));
                }

                continue;
            }

            foreach (var run in net.GroupBy(w => w.Wire.Run))
            {
                Group([.. run], run.SelectMany(Casings));
            }

            foreach (var run in net.GroupBy(w => w.Wire.Run))
            {
                Group([.. run], run.SelectMany(Bodies));
            }
        }

        foreach (var wire in all)
        {
            foreach (var dot in wire.Wire.Fans ? [] : wire.Dots)
            {
                builder.Circle(dot.X, dot.Y, 1 + (StrokeWidths.Body(wire.Wire.Step).Value / 2), ShapeStyle.Filled(builder.Palette.Casing));
            }
        }
    }

    /// <summary>The dash that tells what a wire carries, whatever its color.</summary>
    public static (Points Dash, Points Gap) Dash(RunKind kind) => kind switch
    {
        RunKind.Line => (7, 2.4),
        RunKind.Control => (2.6, 2.2),
        RunKind.Speaker => (18, 2.4),
        _ => default,
    };

    /// <summary>A wire's body and tracer along a path whose lengths are in units.</summary>
    public static IEnumerable<Shape> Body(ShapeBuilder d, SheetWire wire, ImmutableArray<PathSegment> path, LoadColoring heat)
    {
        var color = ColorOf(wire, heat);
        var width = wire.InVehicle ? StrokeWidths.Thin(wire.Step) : StrokeWidths.Body(wire.Step);
        if (wire.InVehicle)
        {
            // Hollow beside a thin body: told from new wire without its color, and as thick as its size says.
            yield return new PathShape(path, d.Scaled(new(null, d.Palette.Paper, StrokeWidths.Body(wire.Step))));
        }

        yield return new PathShape(path, d.Scaled(new(null, color, width, Dash(wire.Kind))));
        if (wire.Colors.Length > 1 && heat == LoadColoring.None)
        {
            yield return new PathShape(path, d.Scaled(new(null, Of(wire.Colors[1]), width * 0.36, (5, 3))));
        }
    }

    /// <summary>The outline of a wire and a free margin beside it, so that what it crosses is seen to pass under it.</summary>
    public static IEnumerable<Shape> Casing(ShapeBuilder d, SheetWire wire, ImmutableArray<PathSegment> path, LoadColoring heat)
    {
        var color = ColorOf(wire, heat);
        yield return new PathShape(path, d.Scaled(new(null, d.Palette.Paper, StrokeWidths.Body(wire.Step) + StrokeWidths.Casing + 1.8)));
        yield return new PathShape(
            path,
            d.Scaled(new(null, d.Palette.CasingOf(color), StrokeWidths.Body(wire.Step) + StrokeWidths.Casing)));
    }

    /// <summary>What a wire is drawn in.</summary>
    public static Color ColorOf(SheetWire wire, LoadColoring heat) => heat != LoadColoring.None
        ? wire.HeatStep is { } step ? Palette.Heat[step] : Palette.NoHeat
        : wire.Colors.IsEmpty ? Palette.Of(wire.Kind) : Of(wire.Colors[0]);

    private static Color Of(Language.ConductorColor color) => new(color.Red, color.Green, color.Blue);

    private IEnumerable<Shape> Casings(Drawn wire) => wire.Polylines.SelectMany(c => Casing(builder, wire.Wire, Rounded(c), heat));

    private IEnumerable<Shape> Bodies(Drawn wire) => wire.Polylines.SelectMany(c => Body(builder, wire.Wire, Rounded(c), heat));

    private void Group(ImmutableArray<Drawn> parts, IEnumerable<Shape> shapes)
    {
        var wire = parts[0].Wire;
        builder.Add(new GroupShape(wire.AccessibleText, [.. shapes])
        {
            Marks =
            [
                new("data-run", wire.Run),
                new("data-from", string.Join(' ', parts.SelectMany(p => p.Wire.From).Distinct())),
                new("data-to", string.Join(' ', parts.SelectMany(p => p.Wire.To).Distinct())),
                new("data-net", nets[wire.Run]), new("data-kind", parts[0].Link.Kind),
                .. wire.InVehicle ? new[] { new ShapeAttribute("data-origin", Language.Origins.Words[wire.Origin]) } : [],
            ],
        });
    }

    private ImmutableArray<PathSegment> Rounded(ImmutableArray<GridPoint> points)
    {
        var f = builder.Frame;
        var steps = ImmutableArray.CreateBuilder<PathSegment>();
        steps.Add(new(PathMove.Start, f.At(points[0].X, points[0].Y)));
        for (var i = 1; i < points.Length - 1; i++)
        {
            var (a, b, c) = (points[i - 1], points[i], points[i + 1]);
            var r = Math.Min(Radius, Math.Min(Distance(a, b), Distance(b, c)) / 2.0);
            var (ix, iy, ox, oy) = (Math.Sign(b.X - a.X), Math.Sign(b.Y - a.Y), Math.Sign(c.X - b.X), Math.Sign(c.Y - b.Y));
            var turn = (ix * oy) - (iy * ox);
            if (turn == 0)
            {
                steps.Add(new(PathMove.Line, f.At(b.X, b.Y)));
                continue;
            }

            steps.Add(new(PathMove.Line, f.At(b.X - (ix * r), b.Y - (iy * r))));
            steps.Add(new(PathMove.Arc, f.At(b.X + (ox * r), b.Y + (oy * r)), f.Of(r), turn > 0));
        }

        steps.Add(new(PathMove.Line, f.At(points[^1].X, points[^1].Y)));
        return steps.ToImmutable();
    }

    private static int Distance(GridPoint a, GridPoint b) => Math.Abs(a.X - b.X) + Math.Abs(a.Y - b.Y);

    private sealed record Drawn(
        SheetWire Wire,
        WireLink Link,
        ImmutableArray<ImmutableArray<GridPoint>> Polylines,
        ImmutableArray<GridPoint> Dots);
}
