using System.Buffers.Binary;
using System.IO.Hashing;
using SkiaSharp;
using WireSketch.Drawing.Scenes;

namespace WireSketch.Drawing.Output;

/// <summary>Writes a scene as PNG, with its resolution, so that it prints at its own size.</summary>
public static class PngWriter
{
    /// <summary>Length of signature and IHDR, which come first in every PNG.</summary>
    private const int AfterHeader = 33;

    private const double PointsPerInch = 72;
    private const double InchesPerMeter = 1 / 0.0254;

    /// <summary>The file.</summary>
    /// <param name="scene">What to draw.</param>
    /// <param name="dotsPerInch">Resolution, 20 to 1200.</param>
    /// <exception cref="ArgumentOutOfRangeException">The resolution is out of range.</exception>
    public static byte[] Write(Scene scene, int dotsPerInch = 300)
    {
        ArgumentOutOfRangeException.ThrowIfLessThan(dotsPerInch, 20);
        ArgumentOutOfRangeException.ThrowIfGreaterThan(dotsPerInch, 1200);
        var scale = dotsPerInch / PointsPerInch;
        var (width, height) = ((int)Math.Round(scene.Width.Value * scale), (int)Math.Round(scene.Height.Value * scale));
        using var bitmap = new SKBitmap(new SKImageInfo(width, height, SKColorType.Rgba8888, SKAlphaType.Opaque));
        using (var canvas = new SKCanvas(bitmap))
        {
            canvas.Scale((float)scale);
            using var painter = new ScenePainter([scene]);
            painter.Paint(canvas, scene);
        }

        using var picture = bitmap.Encode(SKEncodedImageFormat.Png, 100);
        return WithResolution(picture.ToArray(), (uint)Math.Round(dotsPerInch * InchesPerMeter));
    }

    /// <summary>Adds a pHYs chunk (PNG specification, third edition, 11.3.4.3) after the header.</summary>
    private static byte[] WithResolution(byte[] png, uint dotsPerMeter)
    {
        Span<byte> chunk = stackalloc byte[21];
        BinaryPrimitives.WriteInt32BigEndian(chunk, 9);
        "pHYs"u8.CopyTo(chunk[4..]);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[8..], dotsPerMeter);
        BinaryPrimitives.WriteUInt32BigEndian(chunk[12..], dotsPerMeter);
        chunk[16] = 1;
        BinaryPrimitives.WriteUInt32BigEndian(chunk[17..], Crc32.HashToUInt32(chunk[4..17]));
        return [.. png.AsSpan(0, AfterHeader), .. chunk, .. png.AsSpan(AfterHeader)];
    }
}
