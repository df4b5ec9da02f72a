using System.Text;
using System.Text.RegularExpressions;
using SkiaSharp;
using UglyToad.PdfPig;
using WireSketch.Drawing.Output;
using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Tests.Scenes;
using WireSketch.Testing;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

/// <summary>The three outputs of a shipped system, read back by independent programs.</summary>
public sealed partial class RealDrawingTests
{
    /// <summary>
    /// The whole drawing but for the letters of its fonts: a change of it is read, and looked at, before it is committed.
    /// </summary>
    [Theory]
    [InlineData("one-amplifier")]
    [InlineData("two-batteries")]
    public void The_drawing_is_as_committed(string spec)
    {
        var svg = Encoding.UTF8.GetString(SvgWriter.Write(Drawn.Draw(spec).Scenes[0]));
        Baseline.Match($"tests/WireSketch.Drawing.Tests/Output/{spec}.svg", FontData().Replace(svg, "base64,…"));
    }

    [GeneratedRegex("base64,[A-Za-z0-9+/=]+")]
    private static partial Regex FontData();

    [Fact]
    public void Every_label_of_the_drawing_can_be_searched_for_in_the_PDF()
    {
        var set = Drawn.Draw("two-batteries");
        using var pdf = PdfDocument.Open(PdfWriter.Write(set.Scenes, "Two batteries"));
        for (var i = 0; i < set.Scenes.Length; i++)
        {
            var page = pdf.GetPage(i + 1);
            Assert.Equal((set.Scenes[i].Width.Value, set.Scenes[i].Height.Value), (page.Width, page.Height));
            var text = string.Concat(page.Letters.Select(l => l.Value));
            Assert.All(set.Scenes[i].All().OfType<TextShape>(), t => Assert.Contains(t.Words, text, StringComparison.Ordinal));
        }
    }

    [Theory]
    [InlineData("one-amplifier", 0)]
    [InlineData("work-van", 0)]
    [InlineData("competition", 1)]
    public void A_browser_sets_every_text_where_we_do(string spec, int sheet)
    {
        Browser.Need();
        var scene = Drawn.Draw(spec).Scenes[sheet];
        var seen = Browser.Texts(SvgWriter.Write(scene));
        var ours = scene.All().OfType<TextShape>().ToArray();
        Assert.Equal(ours.Length, seen.Length);
        foreach (var (text, (left, length)) in ours.Zip(seen).Where(p => !p.First.Upwards))
        {
            // A pixel of the screen is three quarters of a point.
            Assert.True(
                Math.Abs(text.Box.X.Value - left) < 0.75 && Math.Abs(text.Box.Width.Value - length) < 0.75,
                $"{text.Words}: {text.Box.X} and {text.Box.Width}, the browser {left} and {length}");
        }
    }

    [Theory]
    [InlineData("one-amplifier", 0)]
    [InlineData("work-van", 0)]
    [InlineData("competition", 1)]
    public void At_twice_the_size_not_one_pixel_in_a_hundred_differs_from_a_browser(string spec, int sheet)
    {
        Browser.Need();
        var scene = Drawn.Draw(spec).Scenes[sheet];
        using var theirs = SKBitmap.Decode(Browser.Screenshot(SvgWriter.Write(scene), 1056, 816));
        using var ours = SKBitmap.Decode(PngWriter.Write(scene, 192));
        var differing = ours.Pixels.Zip(theirs.Pixels)
            .Count(p =>
                Math.Abs(p.First.Red - p.Second.Red)
                    + Math.Abs(p.First.Green - p.Second.Green)
                    + Math.Abs(p.First.Blue - p.Second.Blue) > 96);
        Assert.True(differing <= ours.Pixels.Length / 100, $"{differing} of {ours.Pixels.Length} pixels differ");
    }
}
