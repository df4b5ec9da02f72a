using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;

namespace WireSketch.Drawing.Scenes;

/// <summary>
/// Small symbols after the forms of IEC 60617, drawn by ourselves, 18 units wide and 14 high. They help the eye; the name beside
/// them says what the device is.
/// </summary>
internal static class Symbols
{
    public const double Width = 18;
    public const double Height = 14;

    public static void Draw(ShapeBuilder d, DeviceSymbol sign, double x, double y)
    {
        var ink = ShapeStyle.Line(d.Palette.Ink, 1.1);
        var body = new ShapeStyle(d.Palette.Box, d.Palette.Ink, 1.1);
        var (mx, my) = (x + (Width / 2), y + (Height / 2));
        switch (sign)
        {
            case DeviceSymbol.Battery:
                d.Lines(ink, [x, my, x + 7, my], [x + 7, y + 1, x + 7, y + 13], [x + 11, my, x + 18, my]);
                d.Lines(ShapeStyle.Line(d.Palette.Ink, 2.2), [x + 11, y + 4, x + 11, y + 10]);
                break;
            case DeviceSymbol.Capacitor:
                d.Lines(ink, [x, my, x + 7, my], [x + 11, my, x + 18, my]);
                d.Lines(ShapeStyle.Line(d.Palette.Ink, 1.6), [x + 7, y + 1, x + 7, y + 13], [x + 11, y + 1, x + 11, y + 13]);
                break;
            case DeviceSymbol.Alternator:
                Ring(d, mx, my, "G");
                break;
            case DeviceSymbol.Motor:
                Ring(d, mx, my, "M");
                break;
            case DeviceSymbol.Source:
                d.Rect(x + 1, y, 16, 14, 1, body);
                d.Lines(ink, [x + 1, y + 14, x + 17, y], [x + 4, y + 4, x + 8, y + 4], [x + 10, y + 10, x + 14, y + 10]);
                break;
            case DeviceSymbol.Fuse:
                Fuse(d, x, my, Width);
                break;
            case DeviceSymbol.Breaker:
                Breaker(d, x, my, Width);
                break;
            case DeviceSymbol.Relay:
                d.Rect(x, y + 3, 8, 8, 0, body);
                d.Lines(
                    ink,
                    [x + 2, y + 11, x + 6, y + 3],
                    [x + 8, my, x + 11, my],
                    [x + 13, y + 13, x + 13, y + 9, x + 17, y + 3],
                    [x + 13, y + 1, x + 13, y + 3]);
                break;
            case DeviceSymbol.Switch:
            case DeviceSymbol.Isolator:
                d.Lines(ink, [x, y + 10, x + 5, y + 10, x + 13, y + 4], [x + 13, y + 10, x + 18, y + 10]);
                if (sign == DeviceSymbol.Isolator)
                {
                    d.Lines(ink, [x + 9, y + 7, x + 9, y + 1], [x + 6.5, y + 1, x + 11.5, y + 1]);
                }

                break;
            case DeviceSymbol.Speaker:
                d.Rect(x + 3, y + 4, 4.5, 6, 0, body);
                d.Figure(body, x + 7.5, y + 4, x + 13, y + 0.5, x + 13, y + 13.5, x + 7.5, y + 10);
                break;
            case DeviceSymbol.Lamp:
                d.Circle(mx, my, 6.5, body);
                d.Lines(ink, [mx - 4.6, my - 4.6, mx + 4.6, my + 4.6], [mx - 4.6, my + 4.6, mx + 4.6, my - 4.6]);
                break;
            case DeviceSymbol.Resistor:
                d.Lines(ink, [x, my, x + 3, my], [x + 15, my, x + 18, my]);
                d.Rect(x + 3, my - 2.8, 12, 5.6, 0, body);
                break;
            case DeviceSymbol.Amplifier:
                d.Figure(body, x + 3, y + 0.5, x + 15.5, my, x + 3, y + 13.5);
                d.Lines(ink, [x, my, x + 3, my], [x + 15.5, my, x + 18, my]);
                break;
            case DeviceSymbol.Processor:
                d.Rect(x + 1, y + 0.5, 16, 13, 1, body);
                d.Lines(ink, [x + 4, y + 10, x + 8, y + 10, x + 12, y + 4, x + 14.5, y + 4]);
                break;
            case DeviceSymbol.Crossover:
                d.Rect(x + 1, y + 0.5, 16, 13, 1, body);
                d.Lines(ink, [x + 3.5, y + 4, x + 7, y + 4, x + 11, y + 10.5], [x + 6.5, y + 10.5, x + 10.5, y + 4, x + 14.5, y + 4]);
                break;
            case DeviceSymbol.HeadUnit:
                d.Rect(x + 0.5, y + 2, 17, 10, 1.5, body);
                d.Circle(x + 4.5, my, 2, ink);
                d.Rect(x + 8.5, y + 4.8, 7, 4.4, 0.5, ink);
                break;
            case DeviceSymbol.Block:
                d.Lines(ShapeStyle.Line(d.Palette.Ink, 2.4), [x + 3, y + 1, x + 3, y + 13]);
                d.Lines(ink, [x + 3, y + 3, x + 13, y + 3], [x + 3, y + 7, x + 13, y + 7], [x + 3, y + 11, x + 13, y + 11]);
                break;
            case DeviceSymbol.Tap:
                d.Lines(ink, [x + 1, y + 10, x + 17, y + 10], [mx, y + 10, mx, y + 1.5]);
                d.Circle(mx, y + 10, 1.8, ShapeStyle.Filled(d.Palette.Ink));
                break;
            case DeviceSymbol.Plug:
                d.Lines(ShapeStyle.Line(d.Palette.Ink, 2.4), [x + 1, my, x + 7, my]);
                d.Lines(ink, [x + 13.5, y + 2.5, x + 9.5, y + 4, x + 9.5, y + 10, x + 13.5, y + 11.5], [x + 9.5, my, x + 18, my]);
                break;
            case DeviceSymbol.Knob:
                d.Circle(mx, my, 5, body);
                d.Lines(ink, [mx, my, mx + 3.2, my - 3.2], [mx - 7, my + 5, mx + 7, my - 7]);
                break;
            case DeviceSymbol.Cold:
                d.Lines(ink, [mx, y + 0.5, mx, y + 13.5], [mx - 5.6, y + 3.8, mx + 5.6, y + 10.2], [mx - 5.6, y + 10.2, mx + 5.6, y + 3.8]);
                break;
            case DeviceSymbol.Inverter:
                d.Rect(x + 1, y, 16, 14, 1, body);
                d.Lines(
                    ink,
                    [x + 1, y + 14, x + 17, y],
                    [x + 3.5, y + 3, x + 8, y + 3],
                    [x + 3.5, y + 5.4, x + 8, y + 5.4],
                    [x + 9.8, y + 11, x + 11.2, y + 9.4, x + 12.8, y + 11.4, x + 14.4, y + 9.8]);
                break;
        }
    }

    /// <summary>A fuse along a line, its middle at the given ordinate.</summary>
    public static void Fuse(ShapeBuilder d, double x, double y, double width)
    {
        d.Rect(x + (width / 2) - 6, y - 2.6, 12, 5.2, 0, new(d.Palette.Box, d.Palette.Ink, 1.1));
        d.Lines(ShapeStyle.Line(d.Palette.Ink, 1.1), [x, y, x + width, y]);
    }

    /// <summary>A circuit breaker along a line.</summary>
    public static void Breaker(ShapeBuilder d, double x, double y, double width)
    {
        var (left, right) = (x + (width / 2) - 6, x + (width / 2) + 5);
        d.Lines(
            ShapeStyle.Line(d.Palette.Ink, 1.1),
            [x, y, left, y, right - 1, y - 5],
            [right, y, x + width, y],
            [right - 1.8, y - 1.8, right + 1.8, y + 1.8],
            [right - 1.8, y + 1.8, right + 1.8, y - 1.8]);
    }

    /// <summary>Connection to the body, its line ending at the given place.</summary>
    public static void Chassis(ShapeBuilder d, double x, double y) =>
        d.Lines(
            ShapeStyle.Line(d.Palette.Ink, 1.3), [x, y, x, y + 5], [x - 7, y + 5, x + 7, y + 5], [x - 5.5, y + 5, x - 8, y + 10],
            [x, y + 5, x - 2.5, y + 10], [x + 5.5, y + 5, x + 3, y + 10]);

    private static void Ring(ShapeBuilder d, double x, double y, string letter)
    {
        d.Circle(x, y, 6.8, new(d.Palette.Box, d.Palette.Ink, 1.1));
        d.Text(x, y + 2.6, (Points)7.4, letter, TextEmphasis.Strong, TextAnchor.Middle);
    }
}
