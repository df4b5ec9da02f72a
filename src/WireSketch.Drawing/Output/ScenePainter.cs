using System.Collections.Immutable;
using SkiaSharp;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Scenes;

namespace WireSketch.Drawing.Output;

/// <summary>
/// Paints scenes on a canvas, for pictures and for print. Letters are set one by one at our own measures in our own font, and no
/// font is ever looked up by name, so nothing of the machine can get in.
/// </summary>
internal sealed class ScenePainter : IDisposable
{
    private readonly SKTypeface? regular;
    private readonly SKTypeface? semiBold;

    /// <summary>A painter for these scenes and no others: its font holds only their characters.</summary>
    public ScenePainter(ImmutableArray<Scene> scenes)
    {
        regular = Typeface(FontSubset.For(scenes, FontWeight.Regular));
        semiBold = Typeface(FontSubset.For(scenes, FontWeight.SemiBold));
    }

    public void Paint(SKCanvas canvas, Scene scene)
    {
        using (var paper = Brush(scene.Paper))
        {
            canvas.DrawRect(0, 0, Of(scene.Width), Of(scene.Height), paper);
        }

        foreach (var shape in scene.Shapes)
        {
            Paint(canvas, shape);
        }
    }

    public void Dispose()
    {
        regular?.Dispose();
        semiBold?.Dispose();
    }

    private static SKTypeface? Typeface(byte[]? font)
    {
        if (font is null)
        {
            return null;
        }

        using var data = SKData.CreateCopy(font);
        return SKTypeface.FromData(data) ?? throw new InvalidOperationException("the bundled font cannot be loaded");
    }

    private void Paint(SKCanvas canvas, Shape shape)
    {
        switch (shape)
        {
            case GroupShape group:
                foreach (var part in group.Shapes)
                {
                    Paint(canvas, part);
                }

                break;
            case RectShape r:
                var box = SKRect.Create(Of(r.Area.X), Of(r.Area.Y), Of(r.Area.Width), Of(r.Area.Height));
                Paint(r.Look, brush => canvas.DrawRoundRect(box, Of(r.Radius), Of(r.Radius), brush));
                break;
            case CircleShape c:
                Paint(c.Look, brush => canvas.DrawCircle(Of(c.Center.X), Of(c.Center.Y), Of(c.Radius), brush));
                break;
            case PathShape p:
                using (var path = Path(p.Steps))
                {
                    Paint(p.Look, brush => canvas.DrawPath(path, brush));
                }

                break;
            case TextShape t:
                Paint(canvas, t);
                break;
        }
    }

    private void Paint(SKCanvas canvas, TextShape text)
    {
        canvas.Save();
        if (text.Upwards)
        {
            canvas.RotateDegrees(-90, Of(text.At.X), Of(text.At.Y));
        }

        var x = text.Box.X;
        foreach (var span in text.Spans)
        {
            var typeface = (span.Weight == FontWeight.SemiBold ? semiBold : regular)!;
            using var font = new SKFont(typeface, Of(text.Size))
            {
                Hinting = SKFontHinting.None,
                Subpixel = true,
                Edging = SKFontEdging.Antialias,
                LinearMetrics = true
            };
            var glyphs = new List<ushort>();
            var places = new List<float>();
            for (var i = 0; i < span.Words.Length; i += char.IsSurrogatePair(span.Words, i) ? 2 : 1)
            {
                glyphs.Add(font.GetGlyph(char.ConvertToUtf32(span.Words, i)));
                places.Add(Of(x + FontMetrics.Width(span.Words[..i], text.Size, span.Weight, text.Spacing)));
            }

            if (glyphs.Count > 0)
            {
                using var builder = new SKTextBlobBuilder();
                builder.AddHorizontalRun(glyphs.ToArray(), font, places.ToArray(), Of(text.At.Y));
                using var blob = builder.Build();
                using var brush = Brush(span.Color);
                canvas.DrawText(blob, 0, 0, brush);
            }

            x += FontMetrics.Width(span.Words, text.Size, span.Weight, text.Spacing);
        }

        canvas.Restore();
    }

    private static void Paint(ShapeStyle style, Action<SKPaint> draw)
    {
        if (style.Fill is { } fill)
        {
            using var brush = Brush(fill);
            draw(brush);
        }

        if (style.Stroke is { } stroke)
        {
            using var brush = Brush(stroke);
            brush.Style = SKPaintStyle.Stroke;
            brush.StrokeWidth = Of(style.Width);
            brush.StrokeJoin = SKStrokeJoin.Round;
            brush.StrokeCap = style.RoundEnds ? SKStrokeCap.Round : SKStrokeCap.Butt;
            using var dash = style.Dash.Dash > 0 ? SKPathEffect.CreateDash([Of(style.Dash.Dash), Of(style.Dash.Gap)], 0) : null;
            brush.PathEffect = dash;
            draw(brush);
        }
    }

    private static SKPath Path(ImmutableArray<PathSegment> steps)
    {
        using var builder = new SKPathBuilder();
        foreach (var step in steps)
        {
            var (x, y) = (Of(step.To.X), Of(step.To.Y));
            switch (step.Move)
            {
                case PathMove.Start:
                    builder.MoveTo(x, y);
                    break;
                case PathMove.Line:
                    builder.LineTo(x, y);
                    break;
                case PathMove.Arc:
                    builder.ArcTo(
                        Of(step.Radius),
                        Of(step.Radius),
                        0,
                        SKPathArcSize.Small,
                        step.Clockwise ? SKPathDirection.Clockwise : SKPathDirection.CounterClockwise,
                        x,
                        y);
                    break;
                default:
                    builder.Close();
                    break;
            }
        }

        return builder.Detach();
    }

    private static SKPaint Brush(Color color) => new() { Color = new(color.Red, color.Green, color.Blue), IsAntialias = true };

    private static float Of(Points points) => (float)points.Value;
}
