using System.Globalization;
using System.Text;
using WireSketch.Drawing.Layout;

namespace WireSketch.Drawing.Tests.Layout;

/// <summary>Draws a layout plainly as SVG, for looking at and for measuring from outside.</summary>
internal static class DebugSvg
{
    private static readonly Dictionary<string, string> Colors = new()
    {
        ["supply"] = "#c22",
        ["ground"] = "#333",
        ["line"] = "#27a",
        ["speaker"] = "#285",
        ["control"] = "#86b",
    };

    public static string Draw(SheetGraph graph, SheetLayout sheet, Func<string, string> label)
    {
        var o = new StringBuilder();
        o.Append(
            CultureInfo.InvariantCulture,
            $"<svg xmlns=\"http://www.w3.org/2000/svg\" viewBox=\"0 0 {sheet.Size.Width} {sheet.Size.Height}\" font-family=\"Liberation "
                + $"Sans, Arial, sans-serif\" font-size=\"7\">\n<rect width=\"{sheet.Size.Width}\" height=\"{sheet.Size.Height}\" "
                + $"fill=\"#fff\"/>\n");
        for (int z = 0; z < sheet.Zones.Length; z++)
        {
            var b = sheet.Zones[z].Box;
            o.Append(
                CultureInfo.InvariantCulture,
                $"<g data-zone=\"{sheet.Zones[z].Id}\"><rect x=\"{b.X + 1}\" y=\"{b.Y}\" width=\"{b.Width - 2}\" height=\"{b.Height}\" "
                    + $"fill=\"{(z % 2 == 0 ? "#f6f7f9" : "#eef1f5")}\"/><text x=\"{b.X + 6}\" y=\"11\" fill=\"#667\" "
                    + $"font-weight=\"bold\">{sheet.Zones[z].Id.ToUpperInvariant()}</text></g>\n");
        }

        foreach (var wall in sheet.Walls)
        {
            o.Append(
                CultureInfo.InvariantCulture,
                $"<rect x=\"{wall.Box.X}\" y=\"{wall.Box.Y}\" width=\"{wall.Box.Width}\" height=\"{wall.Box.Height}\" fill=\"#ccd\"/>\n");
        }

        for (int pass = 0; pass < 2; pass++)
        {
            for (int w = 0; w < sheet.Wires.Length; w++)
            {
                var link = graph.Wires[w];
                double width = link.Kind switch { "supply" => 1.6, "ground" => 1.3, "speaker" => 1.1, _ => .8 };
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"<g data-run=\"{link.Id}\" data-from=\"{link.From}\" data-to=\"{string.Join(' ', link.To)}\" "
                        + $"data-net=\"{link.Net}\" data-kind=\"{link.Kind}\" fill=\"none\">");
                foreach (var polyline in sheet.Wires[w].Polylines)
                {
                    string d = "M" + string.Join(" L", polyline.Select(p => FormattableString.Invariant($"{p.X} {p.Y}")));
                    o.Append(
                        CultureInfo.InvariantCulture,
                        $"<path d=\"{d}\" stroke-linejoin=\"round\" stroke=\"{(pass == 0 ? "#fff" : Colors[link.Kind])}\" "
                            + $"stroke-width=\"{(pass == 0 ? width + 2 : width)}\"{(pass == 0 ? " data-decoration=\"casing\"" : "")}/>");
                }

                o.Append("</g>\n");
            }
        }

        foreach (var wall in sheet.Walls)
        {
            foreach (var p in wall.Passes)
            {
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"<circle cx=\"{p.At.X}\" cy=\"{p.At.Y}\" r=\"3\" fill=\"none\" stroke=\"#223\"/>\n");
            }
        }

        for (int w = 0; w < sheet.Wires.Length; w++)
        {
            foreach (var p in sheet.Wires[w].Dots)
            {
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"<circle cx=\"{p.X}\" cy=\"{p.Y}\" r=\"1.7\" fill=\"{Colors[graph.Wires[w].Kind]}\"/>\n");
            }
        }

        for (int d = 0; d < sheet.Devices.Length; d++)
        {
            Device(o, graph.Devices[d], sheet.Devices[d]);
        }

        for (int w = 0; w < sheet.Wires.Length; w++)
        {
            var b = sheet.Wires[w].Label;
            if (b.Width > 0)
            {
                string[] lines = label(graph.Wires[w].Id).Split('\n');
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"<rect x=\"{b.X}\" y=\"{b.Y}\" width=\"{b.Width}\" height=\"{b.Height}\" rx=\"2\" fill=\"#fff\" stroke=\"#bbc\" "
                        + $"stroke-width=\".4\"/>");
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"<text data-label-for=\"{graph.Wires[w].Id}\" data-box=\"{b.X} {b.Y} {b.Width} {b.Height}\" x=\"{b.X + 2}\" "
                        + $"y=\"{b.Y + 7}\">{lines[0]}");
                if (lines.Length > 1)
                {
                    o.Append(CultureInfo.InvariantCulture, $"<tspan x=\"{b.X + 2}\" dy=\"8.5\">{lines[1]}</tspan>");
                }

                o.Append("</text>\n");
            }
        }

        return o.Append("</svg>\n").ToString();
    }

    private static void Device(StringBuilder o, DeviceBox device, PlacedDevice placed)
    {
        var b = placed.Box;
        bool bare = device.Shape == DeviceShape.Chassis;
        o.Append(
            CultureInfo.InvariantCulture,
            $"<g data-gear=\"{placed.Id}\"><rect x=\"{b.X}\" y=\"{b.Y}\" width=\"{b.Width}\" height=\"{b.Height}\" rx=\"2\" "
                + $"fill=\"#fff\"{(bare ? " fill-opacity=\"0\"" : " stroke=\"#223\" stroke-width=\".8\"")}/>");
        int nameX = bare ? b.X + 16 : b.X + 4, nameY = device.Shape == DeviceShape.Box ? b.Y + 9 : b.Y + (b.Height / 2) + 3;
        string weight = bare ? "normal" : "bold";
        o.Append(CultureInfo.InvariantCulture, $"<text x=\"{nameX}\" y=\"{nameY}\" font-weight=\"{weight}\">{placed.Id}</text>");
        for (int k = 0; k < placed.Ports.Length; k++)
        {
            var p = placed.Ports[k];
            string name = p.Id[(p.Id.LastIndexOf('.') + 1)..];
            o.Append(
                CultureInfo.InvariantCulture,
                $"<circle data-terminal=\"{p.Id}\" cx=\"{p.At.X}\" cy=\"{p.At.Y}\" r=\"1.3\" fill=\"#223\"/>");
            if (bare)
            {
                o.Append(
                    CultureInfo.InvariantCulture,
                    $"<path data-decoration=\"1\" d=\"M{p.At.X - 5} {p.At.Y + 3}h10m-8 3h6m-4 3h2\" stroke=\"#223\"/>");
            }
            else if (device.Ports[k].NameWidth > 0)
            {
                var (x, y, anchor) = p.Side switch
                {
                    PortSide.Left => (p.At.X + 3, p.At.Y + 2, "start"),
                    PortSide.Right => (p.At.X - 3, p.At.Y + 2, "end"),
                    PortSide.Top => (p.At.X, p.At.Y + 8, "middle"),
                    _ => (p.At.X, p.At.Y - 2, "middle"),
                };
                o.Append(CultureInfo.InvariantCulture, $"<text x=\"{x}\" y=\"{y}\" text-anchor=\"{anchor}\" fill=\"#334\">{name}</text>");
            }
        }

        o.Append("</g>\n");
    }
}
