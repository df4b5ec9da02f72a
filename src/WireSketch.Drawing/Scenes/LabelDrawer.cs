using System.Collections.Immutable;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Topology;

namespace WireSketch.Drawing.Scenes;

/// <summary>Draws a wire's label on the wire: a chip with its lines, the letter of its kind, and the marks of its findings.</summary>
internal static class LabelDrawer
{
    private const double Line = 9;

    /// <summary>The letter that tells what a wire carries.</summary>
    public static string Letter(RunKind kind) => kind switch
    {
        RunKind.Supply => "+",
        RunKind.Ground => "−",
        RunKind.Line => "L",
        RunKind.Speaker => "S",
        _ => "C",
    };

    public static void Draw(ShapeBuilder d, SheetWire wire, GridRect box, ImmutableArray<Numbered> marks)
    {
        if (wire.Label.IsEmpty || box.Width == 0)
        {
            return;
        }

        var width =
            wire.Label.Select((line, i) => TextSizes.Width(line).Value + Room(wire, i) + (i == 0 ? Marker.Width(marks) : 0)).Max()
                + SheetMaker.ChipPadding;
        var height = (wire.Label.Length * Line) + 2;
        var (left, top) = (box.X + ((box.Width - width) / 2), box.Y + ((box.Height - height) / 2));
        d.Rect(left, top, width, height, 3, new(d.Palette.Box, d.Palette.Hairline, 0.7));
        var middle = left + (width / 2) - (Marker.Width(marks) / 2);
        var area = d.Frame.Area(left, top, width, height);
        for (var i = 0; i < wire.Label.Length; i++)
        {
            var room = Room(wire, i);
            var y = top + 1 + (Line * i) + 6.8;
            var center = i == 0 ? middle : left + (width / 2);
            ShapeAttribute mark = i == 0 ? new("data-label-for", wire.Run) : new("data-part-of", wire.Run);
            d.Text(
                center + (room / 2.0),
                y,
                TextSizes.Body,
                wire.Label[i],
                TextAnchor.Middle,
                0,
                i == 0 ? [mark, new("data-box", $"{area.X} {area.Y} {area.Width} {area.Height}")] : [mark]);
            if (room > 0)
            {
                Kind(
                    d,
                    wire,
                    wire.IsBundle ? wire.LabelKinds[i] : wire.Kind,
                    center - (TextSizes.Width(wire.Label[i]).Value / 2) - (room / 2.0),
                    y - 6.6);
            }
        }

        Marker.Draw(d, marks, left + width - Marker.Width(marks) + SheetMaker.MarkWidth - Marker.Half - 1.6, top + 5.6, wire.Run);
    }

    /// <summary>Every line of a bundle's label has its letter, a single wire's label one.</summary>
    private static int Room(SheetWire wire, int line) => wire.IsBundle ? SheetMaker.KindRoom : SheetMaker.LabelRoom(wire.Label, line);

    /// <summary>The kind's letter in a small frame.</summary>
    private static void Kind(ShapeBuilder d, SheetWire wire, RunKind kind, double x, double y)
    {
        d.Rect(x, y, 8.6, 8.2, 1.6, new(null, d.Palette.Quiet, 0.6));
        d.Text(
            x + 4.3,
            y + 6.6,
            TextSizes.Body,
            new TextLine([new(Letter(kind), TextEmphasis.Strong)]),
            TextAnchor.Middle,
            0,
            new ShapeAttribute("data-part-of", wire.Run));
    }
}
