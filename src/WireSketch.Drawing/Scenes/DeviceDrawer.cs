using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;

namespace WireSketch.Drawing.Scenes;

/// <summary>Draws a device: its box, symbol, name and terminals.</summary>
internal sealed class DeviceDrawer(ShapeBuilder builder, Func<string, Reference?> references)
{
    private const double Inset = 6;

    public void Draw(SheetDevice device, DeviceBox box, PlacedDevice placed, ImmutableArray<Numbered> marks)
    {
        var d = builder.Inner();
        var area = placed.Box;
        switch (box.Shape)
        {
            case DeviceShape.Chassis:
                d.Rect(area.X, area.Y, area.Width, area.Height, 0, default);
                Chassis(d, device, placed, marks);
                break;
            case DeviceShape.Holder:
                d.Rect(area.X, area.Y, area.Width, area.Height, 3, Outline(d, device, 0.9));
                Holder(d, device, placed, marks);
                break;
            case DeviceShape.Slim when device.Reference is { } run:
                Flag(d, device, placed, references(run));
                break;
            case DeviceShape.Slim:
                d.Rect(area.X, area.Y, area.Width, area.Height, 4, Outline(d, device, 1.2));
                Slim(d, device, placed, marks);
                break;
            default:
                d.Rect(area.X, area.Y, area.Width, area.Height, 5, Outline(d, device, 1.2));
                Box(d, device, box, placed, marks);
                break;
        }

        for (var i = 0; i < placed.Ports.Length; i++)
        {
            Terminal(d, placed.Ports[i], box.Shape == DeviceShape.Chassis);
        }

        builder.Group(device.AccessibleText, d, new ShapeAttribute("data-gear", device.Id));
    }

    private static ShapeStyle Outline(ShapeBuilder d, SheetDevice device, Points width) =>
        new(d.Palette.Box, d.Palette.Ink, width, device.InVehicle ? (3.6, 2.6) : default);

    private static void Terminal(ShapeBuilder d, PlacedPort port, bool hidden) => d.Circle(
        port.At.X,
        port.At.Y,
        hidden ? 0 : 2.3,
        hidden ? default : new(d.Palette.Box, d.Palette.Ink, 1),
        new ShapeAttribute("data-terminal", port.Id));

    private static void Box(ShapeBuilder d, SheetDevice device, DeviceBox box, PlacedDevice placed, ImmutableArray<Numbered> marks)
    {
        var area = placed.Box;
        var hasSign = device.Sign != DeviceSymbol.None;
        var upper = placed.Ports.Any(p => p.Side == PortSide.Top && device.Ports[placed.Ports.IndexOf(p)].Length > 0) ? 7 : 0;
        if (hasSign)
        {
            Symbols.Draw(d, device.Sign, area.X + 4.5, area.Y + upper + 3);
        }

        var top = area.Y + upper + 2.5;
        Name(d, device, area.X + (hasSign ? 25 : Inset), top + (hasSign && device.Name.Length == 1 ? 3 : 0), marks);
        Lines(d, Quiet(device.Captions), area.X + Inset, top + SheetMaker.HeadHeight(device));
        for (var i = 0; i < placed.Ports.Length; i++)
        {
            TerminalName(d, placed.Ports[i], device.Ports[i]);
        }

        Lines(d, device.Facts, area.X + Inset, area.Bottom - box.FooterHeight + 1);
    }

    private static double Name(ShapeBuilder d, SheetDevice device, double x, double y, ImmutableArray<Numbered> marks)
    {
        foreach (var line in device.Name)
        {
            y += TextSizes.NameLeading.Value;
            d.Text(x, y - 1.8, TextSizes.Name, line, TextEmphasis.Strong);
        }

        var width = FontMetrics.Width(device.Name[^1], TextSizes.Name, FontWeight.SemiBold).Value;
        Marker.Draw(d, marks, x + width + Marker.Half + 3, y - 5);

        return y;
    }

    private static ImmutableArray<TextLine> Quiet(ImmutableArray<string> lines) => [
        .. lines.Select(c => TextLine.Of(c, TextEmphasis.Quiet))
    ];

    private static double Lines(ShapeBuilder d, ImmutableArray<TextLine> lines, double x, double y)
    {
        foreach (var line in lines)
        {
            y += TextSizes.Leading.Value;
            d.Text(x, y - 2.2, TextSizes.Body, line);
        }

        return y;
    }

    private static void TerminalName(ShapeBuilder d, PlacedPort port, string name)
    {
        var (x, y, anchor) = port.Side switch
        {
            PortSide.Left => (port.At.X + 5.0, port.At.Y + 2.5, TextAnchor.Start),
            PortSide.Right => (port.At.X - 5.0, port.At.Y + 2.5, TextAnchor.End),
            PortSide.Top => (port.At.X, port.At.Y + 9.5, TextAnchor.Middle),
            _ => (port.At.X, port.At.Y - 4.0, TextAnchor.Middle),
        };
        d.Text(x, y, TextSizes.Body, name, TextEmphasis.Plain, anchor);
    }

    private static void Slim(ShapeBuilder d, SheetDevice device, PlacedDevice placed, ImmutableArray<Numbered> marks)
    {
        var (area, port) = (placed.Box, placed.Ports[0]);
        var right = port.Side == PortSide.Right;
        Symbols.Draw(d, device.Sign, right ? area.Right - 4 - Symbols.Width - 2 : area.X + 5, port.At.Y - (Symbols.Height / 2));
        Name(d, device, right ? area.X + Inset : area.X + 25, port.At.Y - 5.5, marks);
        var under = ImmutableArray.CreateBuilder<TextLine>();
        if (device.Ports[0].Length > 0)
        {
            under.Add(TextLine.Of(device.Ports[0]));
        }

        under.AddRange(Quiet(device.Captions));
        under.AddRange(device.Facts);
        Lines(d, under.ToImmutable(), area.X + Inset, port.At.Y + 7);
    }

    private static void Holder(ShapeBuilder d, SheetDevice device, PlacedDevice placed, ImmutableArray<Numbered> marks)
    {
        var area = placed.Box;
        var y = placed.Ports[0].At.Y;
        if (device.Sign == DeviceSymbol.Breaker)
        {
            Symbols.Breaker(d, area.X, y, area.Width);
        }
        else
        {
            Symbols.Fuse(d, area.X, y, area.Width);
        }

        var center = area.X + (area.Width / 2.0);
        d.Text(
            center - (Marker.Width(marks) / 2),
            area.Y + 9.2,
            TextSizes.Rating,
            device.Name.IsEmpty ? "" : device.Name[0],
            TextEmphasis.Strong,
            TextAnchor.Middle);
        Marker.Draw(d, marks, area.Right - Marker.Width(marks) + SheetMaker.MarkWidth - Marker.Half - 2, area.Y + 6.4);

        for (var i = 0; i < device.Captions.Length; i++)
        {
            d.Text(
                center, y + 13 + (i * TextSizes.Leading.Value), TextSizes.Body, device.Captions[i], TextEmphasis.Quiet, TextAnchor.Middle);
        }
    }

    private static void Chassis(ShapeBuilder d, SheetDevice device, PlacedDevice placed, ImmutableArray<Numbered> marks)
    {
        var at = placed.Ports[0].At;
        Symbols.Chassis(d, at.X, at.Y);
        Lines(d, Quiet(device.Captions), at.X + 13, Name(d, device, at.X + 13, at.Y, marks));
    }

    /// <summary>A flag whose point shows where the wire goes on.</summary>
    private static void Flag(ShapeBuilder d, SheetDevice device, PlacedDevice placed, Reference? reference)
    {
        var area = placed.Box;
        var right = placed.Ports[0].Side == PortSide.Right;
        d.Rect(area.X, area.Y, area.Width, area.Height, 0, default);
        var (tail, point) = right ? (area.Right, area.X) : ((double)area.X, (double)area.Right);
        var shoulder = right ? point + 7 : point - 7;
        d.Figure(
            new(d.Palette.Box, d.Palette.Quiet, 0.9),
            tail,
            area.Y + 1,
            shoulder,
            area.Y + 1,
            point,
            area.Y + (area.Height / 2.0),
            shoulder,
            area.Bottom - 1,
            tail,
            area.Bottom - 1);
        var line = reference is null
            ? TextLine.Of("goes on", TextEmphasis.Quiet)
            : new TextLine([
                new(reference.Letter, TextEmphasis.Strong),
                new($" sheet {reference.Sheet}, {reference.Square}", TextEmphasis.Plain)
            ]);
        d.Text(right ? area.X + 9 : area.X + 6, placed.Ports[0].At.Y + 2.5, TextSizes.Body, line);
    }
}
