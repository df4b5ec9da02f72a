using SkiaSharp;
using WireSketch.Drawing.Output;
using WireSketch.Drawing.Scenes;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

/// <summary>What we draw against what a browser makes of the same SVG.</summary>
public sealed class BrowserComparisonTests
{
    /// <summary>A channel that differs by more than this is seen; less is the last shade of a smoothed edge.</summary>
    private const int Visible = 64;

    [Fact]
    public void A_browser_sets_every_text_within_a_pixel_of_our_measures()
    {
        Browser.Need();
        var scene = SampleScene.Of();
        var seen = Browser.Texts(SvgWriter.Write(scene));
        var ours = scene.All().OfType<TextShape>().ToArray();
        Assert.Equal(ours.Length, seen.Length);
        foreach (var (text, (left, length)) in ours.Zip(seen).Where(p => !p.First.Upwards))
        {
            Assert.Equal(text.Box.X.Value, left, 0.5);
            Assert.Equal(text.Box.Width.Value, length, 0.5);
        }
    }

    [Fact]
    public void At_twice_the_size_not_one_pixel_in_a_hundred_differs_from_a_browser()
    {
        Browser.Need();
        var scene = SampleScene.Of();
        using var theirs = SKBitmap.Decode(Browser.Screenshot(SvgWriter.Write(scene), 1056, 816));
        using var ours = SKBitmap.Decode(PngWriter.Write(scene, 192));
        Assert.Equal((ours.Width, ours.Height), (theirs.Width, theirs.Height));
        var differing = ours.Pixels.Zip(theirs.Pixels).Count(p =>
            Math.Abs(p.First.Red - p.Second.Red) > Visible
                || Math.Abs(p.First.Green - p.Second.Green) > Visible
                || Math.Abs(p.First.Blue - p.Second.Blue) > Visible);
        var drawn = ours.Pixels.Count(p => p != SKColors.White);
        Assert.True(drawn > 50_000);
        Assert.True(differing <= ours.Pixels.Length / 100, $"{differing} of {ours.Pixels.Length} pixels differ");
        Assert.True(differing <= drawn / 50, $"{differing} of {drawn} drawn pixels differ");
    }
}
