using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;

namespace WireSketch.Drawing.Scenes;

/// <summary>One drawn sheet: shapes on a page, in points from its upper left corner, x to the right and y down.</summary>
public sealed record Scene
{
    /// <summary>Short name of the sheet, for bookmarks and file names: <c>Supply and ground</c>.</summary>
    public required string Name { get; init; }

    /// <summary>Title of the sheet for people who do not see it.</summary>
    public required string Title { get; init; }

    /// <summary>What it shows, in words.</summary>
    public required string Description { get; init; }

    /// <summary>Width of the page.</summary>
    public required Points Width { get; init; }

    /// <summary>Height of the page.</summary>
    public required Points Height { get; init; }

    /// <summary>Color of the page.</summary>
    public required Color Paper { get; init; }

    /// <summary>What is drawn, the lowest first.</summary>
    public required ImmutableArray<Shape> Shapes { get; init; }

    /// <summary>Every shape, groups before what they hold.</summary>
    public IEnumerable<Shape> All() => Shapes.SelectMany(Walk);

    private static IEnumerable<Shape> Walk(Shape shape) =>
        shape is GroupShape group ? group.Shapes.SelectMany(Walk).Prepend(shape) : [shape];
}

/// <summary>A place on a sheet.</summary>
public readonly record struct Point(Points X, Points Y);

/// <summary>A rectangle on a sheet.</summary>
public readonly record struct Rect(Points X, Points Y, Points Width, Points Height)
{
    public Points Right => X + Width;

    public Points Bottom => Y + Height;

    public Point Center => new(X + (Width / 2), Y + (Height / 2));

    public Rect Inset(Points by) => new(X + by, Y + by, Width - by - by, Height - by - by);
}

/// <summary>An attribute of a shape in the SVG, such as <c>data-run</c>.</summary>
public readonly record struct ShapeAttribute(string Name, string Value);

/// <summary>How a shape is painted.</summary>
/// <param name="Fill">Color inside; null for none.</param>
/// <param name="Stroke">Color of the line; null for none.</param>
/// <param name="Width">Thickness of the line.</param>
/// <param name="Dash">Lengths of dash and gap; zero for a whole line.</param>
/// <param name="RoundEnds">Ends and dashes are rounded; else cut off.</param>
public readonly record struct ShapeStyle(
    Color? Fill,
    Color? Stroke = null,
    Points Width = default,
    (Points Dash, Points Gap) Dash = default,
    bool RoundEnds = false)
{
    public static ShapeStyle Filled(Color fill) => new(fill);

    public static ShapeStyle Line(Color stroke, Points width) => new(null, stroke, width);
}

/// <summary>Something that is drawn.</summary>
public abstract record Shape
{
    /// <summary>Attributes for the SVG; other outputs pass them over.</summary>
    public ImmutableArray<ShapeAttribute> Marks { get; init; } = [];
}

/// <summary>Shapes that belong together.</summary>
/// <param name="Title">Name for people who do not see it, shown by browsers beside the pointer; null for none.</param>
/// <param name="Shapes">What it holds, the lowest first.</param>
public sealed record GroupShape(string? Title, ImmutableArray<Shape> Shapes) : Shape;

/// <summary>A rectangle, perhaps with rounded corners.</summary>
public sealed record RectShape(Rect Area, Points Radius, ShapeStyle Look) : Shape;

/// <summary>A circle.</summary>
public sealed record CircleShape(Point Center, Points Radius, ShapeStyle Look) : Shape;

/// <summary>Lines and small arcs.</summary>
public sealed record PathShape(ImmutableArray<PathSegment> Steps, ShapeStyle Look) : Shape;

/// <summary>A step of a path.</summary>
public readonly record struct PathSegment(PathMove Move, Point To, Points Radius = default, bool Clockwise = false);

/// <summary>How a path goes on.</summary>
public enum PathMove
{
    /// <summary>Lifts the pen.</summary>
    Start,

    /// <summary>A straight line.</summary>
    Line,

    /// <summary>An arc of a circle, not more than half of it.</summary>
    Arc,

    /// <summary>Back to the last start; its place is not read.</summary>
    Close,
}

/// <summary>Where a text stands relative to its place.</summary>
public enum TextAnchor
{
    Start,
    Middle,
    End,
}

/// <summary>A stretch of text of one weight and color.</summary>
public readonly record struct TextSpan(string Words, FontWeight Weight, Color Color);

/// <summary>One line of text.</summary>
/// <param name="At">Place of its anchor on the baseline.</param>
/// <param name="Size">Size of the em.</param>
/// <param name="Anchor">What stands at the place.</param>
/// <param name="Spans">What it says, from left to right.</param>
/// <param name="Spacing">What is added after every letter.</param>
/// <param name="Upwards">It is written from the bottom to the top.</param>
public sealed record TextShape(
    Point At, Points Size, TextAnchor Anchor, ImmutableArray<TextSpan> Spans, Points Spacing = default, bool Upwards = false) : Shape
{
    /// <summary>
    /// The rectangle it takes, from the top of its line to the bottom; for a text written upwards, as if it were not turned.
    /// </summary>
    public Rect Box
    {
        get
        {
            var (size, spacing) = (Size, Spacing);
            var width = Spans.Aggregate(Points.Zero, (sum, s) => sum + FontMetrics.Width(s.Words, size, s.Weight, spacing));
            var left = At.X - (Anchor switch { TextAnchor.Middle => width / 2, TextAnchor.End => width, _ => Points.Zero });
            // Capitals and their accents reach 0.78 em above the line and tails 0.22 em below; the font's own line is taller for its
            // spacing.
            return new(left, At.Y - (Size * 0.78), width, Size);
        }
    }

    public string Words => string.Concat(Spans.Select(s => s.Words));
}
