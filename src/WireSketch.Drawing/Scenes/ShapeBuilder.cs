using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Drawing.Scenes;

/// <summary>Where the units of a part of the page lie on paper.</summary>
/// <param name="Scale">Points for a unit.</param>
/// <param name="Origin">Place of the unit origin.</param>
internal readonly record struct Frame(double Scale, Point Origin)
{
    public static Frame Page => new(1, default);

    public Points X(double units) => Origin.X + (Points)(units * Scale);

    public Points Y(double units) => Origin.Y + (Points)(units * Scale);

    public Points Of(double units) => units * Scale;

    public Point At(double x, double y) => new(X(x), Y(y));

    /// <summary>Edges are placed one by one, so that boxes that touch in units touch on paper.</summary>
    public Rect Area(double x, double y, double width, double height)
    {
        var (left, top) = (X(x), Y(y));
        return new(left, top, X(x + width) - left, Y(y + height) - top);
    }
}

/// <summary>Gathers shapes, in the units of a frame.</summary>
internal sealed class ShapeBuilder(Frame frame, Palette palette)
{
    private readonly List<Shape> shapes = [];

    public Frame Frame => frame;

    public Palette Palette => palette;

    public ImmutableArray<Shape> Shapes => [.. shapes];

    /// <summary>An empty builder of the same frame.</summary>
    public ShapeBuilder Inner() => new(frame, palette);

    public void Add(Shape shape) => shapes.Add(shape);

    public void Add(IEnumerable<Shape> more) => shapes.AddRange(more);

    public void Group(string? title, ShapeBuilder inner, params ImmutableArray<ShapeAttribute> marks) =>
        shapes.Add(new GroupShape(title, inner.Shapes) { Marks = marks });

    public void Rect(
        double x,
        double y,
        double width,
        double height,
        double radius,
        ShapeStyle style,
        params ImmutableArray<ShapeAttribute> marks) =>
        shapes.Add(new RectShape(frame.Area(x, y, width, height), frame.Of(radius), Scaled(style)) { Marks = marks });

    public void Circle(double x, double y, double radius, ShapeStyle style, params ImmutableArray<ShapeAttribute> marks) =>
        shapes.Add(new CircleShape(frame.At(x, y), frame.Of(radius), Scaled(style)) { Marks = marks });

    /// <summary>Straight strokes: every array is a polyline of x and y in turn.</summary>
    public void Lines(ShapeStyle style, params double[][] lines) => shapes.Add(new PathShape([.. lines.SelectMany(Steps)], Scaled(style)));

    /// <summary>A closed figure.</summary>
    public void Figure(ShapeStyle style, params double[] corners) =>
        shapes.Add(new PathShape([.. Steps(corners), new(PathMove.Close, default)], Scaled(style)));

    public void Path(ImmutableArray<PathSegment> steps, ShapeStyle style) => shapes.Add(new PathShape(steps, style));

    public void Text(
        double x,
        double y,
        Points size,
        string words,
        TextEmphasis emphasis = TextEmphasis.Plain,
        TextAnchor anchor = TextAnchor.Start,
        double spacing = 0) =>
        Text(x, y, size, TextLine.Of(words, emphasis), anchor, spacing);

    public void Text(
        double x,
        double y,
        Points size,
        TextLine line,
        TextAnchor anchor = TextAnchor.Start,
        double spacing = 0,
        params ImmutableArray<ShapeAttribute> marks)
    {
        if (line.Parts.Any(p => p.Text.Length > 0))
        {
            shapes.Add(new TextShape(frame.At(x, y), size * frame.Scale, anchor, Spans(line), frame.Of(spacing)) { Marks = marks });
        }
    }

    public ImmutableArray<TextSpan> Spans(TextLine line) =>
        [
            .. line.Parts.Where(p => p.Text.Length > 0)
                .Select(p =>
                    new TextSpan(
                        FontMetrics.Settable(p.Text),
                        p.Emphasis == TextEmphasis.Strong ? FontWeight.SemiBold : FontWeight.Regular,
                        palette.Of(p.Emphasis)))
        ];

    /// <summary>A style whose lengths are in units.</summary>
    public ShapeStyle Scaled(ShapeStyle style) =>
        style with { Width = style.Width * frame.Scale, Dash = (style.Dash.Dash * frame.Scale, style.Dash.Gap * frame.Scale) };

    private IEnumerable<PathSegment> Steps(double[] line)
    {
        for (var i = 0; i + 1 < line.Length; i += 2)
        {
            yield return new(i == 0 ? PathMove.Start : PathMove.Line, frame.At(line[i], line[i + 1]));
        }
    }
}
