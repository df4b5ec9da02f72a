using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Xml;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Scenes;

namespace WireSketch.Drawing.Output;

/// <summary>
/// Writes a scene as SVG 1.1: real text in an embedded subset of the bundled font, the page's size in points, a title and a description.
/// </summary>
public static class SvgWriter
{
    private const string Svg = "http://www.w3.org/2000/svg";

    /// <summary>The file, UTF-8 without byte order mark. The same scene gives the same bytes.</summary>
    public static byte[] Write(Scene scene)
    {
        using var file = new MemoryStream();
        using (var xml = XmlWriter.Create(file, new() { Encoding = new UTF8Encoding(false), NewLineChars = "\n", CloseOutput = false }))
        {
            xml.WriteStartDocument();
            Line(xml);
            xml.WriteStartElement("svg", Svg);
            xml.WriteAttributeString("width", scene.Width + "pt");
            xml.WriteAttributeString("height", scene.Height + "pt");
            xml.WriteAttributeString("viewBox", $"0 0 {scene.Width} {scene.Height}");
            xml.WriteAttributeString("role", "img");
            xml.WriteAttributeString("aria-labelledby", "title desc");
            xml.WriteAttributeString("lang", "en");
            Element(xml, "title", scene.Title, "title");
            Element(xml, "desc", scene.Description, "desc");
            Element(xml, "style", Style(scene), null);
            Write(xml, new RectShape(new(0, 0, scene.Width, scene.Height), 0, ShapeStyle.Filled(scene.Paper)));
            foreach (var shape in scene.Shapes)
            {
                Write(xml, shape);
            }

            Line(xml);
            xml.WriteEndElement();
            Line(xml);
        }

        return file.ToArray();
    }

    private static string Style(Scene scene)
    {
        var style = new StringBuilder("\n");
        foreach (var weight in (FontWeight[])[FontWeight.Regular, FontWeight.SemiBold])
        {
            if (FontSubset.For([scene], weight) is { } font)
            {
                style.Append(
                    CultureInfo.InvariantCulture,
                    $"@font-face{{font-family:'{FontMetrics.Family}';font-weight:{(int)weight};"
                    + $"src:url(data:font/ttf;base64,{Convert.ToBase64String(font)})}}\n");
            }
        }

        style.Append(
            CultureInfo.InvariantCulture,
            $"text{{font-family:'{FontMetrics.Family}',Inter,sans-serif;font-kerning:none;"
                + $"font-variant-ligatures:none;text-rendering:geometricPrecision;white-space:pre}}\n");
        style.Append(CultureInfo.InvariantCulture, $"@page{{size:{scene.Width}pt {scene.Height}pt;margin:0}}\n");
        style.Append("svg{print-color-adjust:exact;-webkit-print-color-adjust:exact}\n");
        return style.ToString();
    }

    private static void Write(XmlWriter xml, Shape shape)
    {
        Line(xml);
        switch (shape)
        {
            case GroupShape group:
                xml.WriteStartElement("g");
                Marks(xml, group);
                if (group.Title is { } title)
                {
                    xml.WriteElementString("title", Clean(title));
                }

                foreach (var part in group.Shapes)
                {
                    Write(xml, part);
                }

                xml.WriteEndElement();
                break;
            case RectShape r:
                xml.WriteStartElement("rect");
                Marks(xml, r);
                Number(xml, "x", r.Area.X);
                Number(xml, "y", r.Area.Y);
                Number(xml, "width", r.Area.Width);
                Number(xml, "height", r.Area.Height);
                if (r.Radius > 0)
                {
                    Number(xml, "rx", r.Radius);
                }

                Paint(xml, r.Look);
                xml.WriteEndElement();
                break;
            case CircleShape c:
                xml.WriteStartElement("circle");
                Marks(xml, c);
                Number(xml, "cx", c.Center.X);
                Number(xml, "cy", c.Center.Y);
                Number(xml, "r", c.Radius);
                Paint(xml, c.Look);
                xml.WriteEndElement();
                break;
            case PathShape p:
                xml.WriteStartElement("path");
                Marks(xml, p);
                xml.WriteAttributeString("d", Data(p.Steps));
                Paint(xml, p.Look);
                xml.WriteEndElement();
                break;
            case TextShape t:
                Write(xml, t);
                break;
        }
    }

    private static void Write(XmlWriter xml, TextShape text)
    {
        xml.WriteStartElement("text");
        Marks(xml, text);
        Number(xml, "x", text.At.X);
        Number(xml, "y", text.At.Y);
        Number(xml, "font-size", text.Size);
        if (text.Anchor != TextAnchor.Start)
        {
            xml.WriteAttributeString("text-anchor", text.Anchor == TextAnchor.Middle ? "middle" : "end");
        }

        if (text.Spacing != 0)
        {
            Number(xml, "letter-spacing", text.Spacing);
        }

        if (text.Upwards)
        {
            xml.WriteAttributeString("transform", $"rotate(-90 {text.At.X} {text.At.Y})");
        }

        if (!text.Marks.Any(m => m.Name == "data-box"))
        {
            var box = text.Box;
            xml.WriteAttributeString("data-box", $"{box.X} {box.Y} {box.Width} {box.Height}");
        }

        if (text.Spans.Length == 1)
        {
            Type(xml, text.Spans[0]);
            xml.WriteString(Clean(text.Spans[0].Words));
        }
        else
        {
            foreach (var span in text.Spans)
            {
                xml.WriteStartElement("tspan");
                Type(xml, span);
                xml.WriteString(Clean(span.Words));
                xml.WriteEndElement();
            }
        }

        xml.WriteEndElement();
    }

    private static void Type(XmlWriter xml, TextSpan span)
    {
        if (span.Weight != FontWeight.Regular)
        {
            xml.WriteAttributeString("font-weight", ((int)span.Weight).ToString(CultureInfo.InvariantCulture));
        }

        xml.WriteAttributeString("fill", span.Color.ToString());
    }

    private static void Paint(XmlWriter xml, ShapeStyle style)
    {
        xml.WriteAttributeString("fill", style.Fill?.ToString() ?? "none");
        if (style.Stroke is not { } stroke)
        {
            return;
        }

        xml.WriteAttributeString("stroke", stroke.ToString());
        Number(xml, "stroke-width", style.Width);
        if (style.Dash.Dash > 0)
        {
            xml.WriteAttributeString("stroke-dasharray", $"{style.Dash.Dash} {style.Dash.Gap}");
        }

        if (style.RoundEnds)
        {
            xml.WriteAttributeString("stroke-linecap", "round");
        }

        xml.WriteAttributeString("stroke-linejoin", "round");
    }

    /// <summary>Path data: M, H, V, L, A and Z with absolute numbers.</summary>
    internal static string Data(ImmutableArray<PathSegment> steps)
    {
        var data = new StringBuilder();
        var last = default(Point);
        foreach (var step in steps)
        {
            var to = step.To;
            data.Append(step.Move switch
            {
                PathMove.Start => $"M{to.X} {to.Y}",
                PathMove.Line when to.Y == last.Y => $"H{to.X}",
                PathMove.Line when to.X == last.X => $"V{to.Y}",
                PathMove.Line => $"L{to.X} {to.Y}",
                PathMove.Arc => $"A{step.Radius} {step.Radius} 0 0 {(step.Clockwise ? 1 : 0)} {to.X} {to.Y}",
                _ => "Z",
            });
            last = to;
        }

        return data.ToString();
    }

    private static void Marks(XmlWriter xml, Shape shape)
    {
        foreach (var mark in shape.Marks)
        {
            xml.WriteAttributeString(mark.Name, Clean(mark.Value));
        }
    }

    private static void Element(XmlWriter xml, string name, string words, string? id)
    {
        Line(xml);
        xml.WriteStartElement(name);
        if (id is not null)
        {
            xml.WriteAttributeString("id", id);
        }

        xml.WriteString(Clean(words));
        xml.WriteEndElement();
    }

    private static void Number(XmlWriter xml, string name, Points value) => xml.WriteAttributeString(name, value.ToString());

    private static void Line(XmlWriter xml) => xml.WriteRaw("\n");

    /// <summary>Characters that XML cannot hold become a box.</summary>
    private static string Clean(string words) => words.All(XmlConvert.IsXmlChar)
        ? words
        : string.Concat(words.EnumerateRunes().Select(r => r.Value > 0xFFFF || XmlConvert.IsXmlChar((char)r.Value) ? r.ToString() : "□"));
}
