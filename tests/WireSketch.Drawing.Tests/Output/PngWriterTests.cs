using System.Buffers.Binary;
using System.IO.Hashing;
using System.Text;
using SkiaSharp;
using WireSketch.Drawing.Output;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

public sealed class PngWriterTests
{
    [Theory]
    [InlineData(72, 792, 612, 2835)]
    [InlineData(300, 3300, 2550, 11811)]
    public void It_has_the_size_of_the_page_and_says_its_resolution(int dpi, int width, int height, int perMeter)
    {
        var png = PngWriter.Write(SampleScene.Of(), dpi);
        Assert.Equal(width, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(16)));
        Assert.Equal(height, BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(20)));
        var resolution = Assert.Single(Chunks(png).ToArray(), c => c.Name == "pHYs").Data;
        Assert.Equal(perMeter, BinaryPrimitives.ReadInt32BigEndian(resolution));
        Assert.Equal(1, resolution[8]);
    }

    [Fact]
    public void It_decodes_and_is_not_blank()
    {
        using var picture = SKBitmap.Decode(PngWriter.Write(SampleScene.Of(), 144));
        Assert.True(picture.Pixels.Distinct().Count() > 20);
        Assert.Equal(new SKColor(0xc8, 0x32, 0x1f), picture.GetPixel(600, 300));
    }

    [Fact]
    public void The_same_scene_gives_the_same_bytes() =>
        Assert.Equal(PngWriter.Write(SampleScene.Of(), 144), PngWriter.Write(SampleScene.Of(), 144));

    [Fact]
    public void A_resolution_nobody_can_print_is_refused() =>
        Assert.Throws<ArgumentOutOfRangeException>(() => PngWriter.Write(SampleScene.Of(), 5));

    /// <summary>Every chunk, its check sum verified.</summary>
    private static IEnumerable<(string Name, byte[] Data)> Chunks(byte[] png)
    {
        for (var at = 8; at < png.Length;)
        {
            var length = BinaryPrimitives.ReadInt32BigEndian(png.AsSpan(at));
            Assert.Equal(
                Crc32.HashToUInt32(png.AsSpan(at + 4, length + 4)),
                BinaryPrimitives.ReadUInt32BigEndian(png.AsSpan(at + 8 + length)));
            yield return (Encoding.ASCII.GetString(png, at + 4, 4), png[(at + 8)..(at + 8 + length)]);
            at += 12 + length;
        }
    }
}
