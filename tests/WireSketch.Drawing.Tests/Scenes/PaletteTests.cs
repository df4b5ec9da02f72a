using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;
using Xunit;

namespace WireSketch.Drawing.Tests.Scenes;

/// <summary>Contrast after WCAG 2.2: success criteria 1.4.3 (text, 4.5 : 1) and 1.4.11 (lines that mean something, 3 : 1).</summary>
public sealed class PaletteTests
{
    [Theory]
    [InlineData(Theme.Print)]
    [InlineData(Theme.Dark)]
    public void Text_can_be_read_on_everything_it_stands_on(Theme tint)
    {
        var p = Palette.Of(tint);
        foreach (var ground in (Color[])[p.Paper, p.Box, p.WarmZone, p.Zone, p.OtherZone])
        {
            foreach (var ink in (Color[])[p.Ink, p.Quiet, p.Computed, p.Error, p.Warning, p.Advice])
            {
                Assert.True(ink.Contrast(ground) >= 4.5, $"{ink} on {ground}: {ink.Contrast(ground):0.00}");
            }
        }

        Assert.All((Color[])[p.Error, p.Warning, p.Advice], mark => Assert.True(p.OnMark.Contrast(mark) >= 4.5));
    }

    [Theory]
    [InlineData(Theme.Print)]
    [InlineData(Theme.Dark)]
    public void A_wire_of_any_color_is_seen_on_any_ground_by_itself_or_by_its_outline(Theme tint)
    {
        var p = Palette.Of(tint);
        foreach (var color in ConductorColor.All.Select(c => new Color(c.Red, c.Green, c.Blue)))
        {
            foreach (var ground in (Color[])[p.Box, p.WarmZone, p.Zone, p.OtherZone])
            {
                var seen = Math.Max(color.Contrast(ground), p.CasingOf(color).Contrast(ground));
                Assert.True(seen >= 3, $"{color} on {ground}: {seen:0.00}");
            }
        }
    }

    [Theory]
    [InlineData(Theme.Print)]
    [InlineData(Theme.Dark)]
    public void Steps_of_a_heat_scale_differ_in_lightness_and_are_seen_by_themselves_or_by_their_outline(Theme tint)
    {
        var p = Palette.Of(tint);
        Assert.All(
            Palette.Heat.Zip(Palette.Heat.Skip(1)),
            s =>
                Assert.True(
                    s.First.Contrast(s.Second) >= 1.35 && s.First.Contrast(p.Ink) != s.Second.Contrast(p.Ink),
                    $"{s.First} and {s.Second}: {s.First.Contrast(s.Second):0.00}"));
        Assert.Equal(Palette.Heat, Palette.Heat.OrderByDescending(c => c.Contrast(Color.Hex("#000000"))));
        Assert.All(
            Palette.Heat.Append(Palette.NoHeat),
            c => Assert.True(Math.Max(c.Contrast(p.Zone), p.CasingOf(c).Contrast(p.Zone)) >= 3, $"{c} on {p.Zone}"));
    }

    /// <summary>Worked figures of the definition: black on white is 21, and #777777 on white is 4.48 (W3C, Understanding 1.4.3).</summary>
    [Fact]
    public void Contrast_is_that_of_the_standard()
    {
        Assert.Equal(21, Color.Hex("#000000").Contrast(Color.Hex("#ffffff")), 0.001);
        Assert.Equal(4.48, Color.Hex("#777777").Contrast(Color.Hex("#ffffff")), 0.005);
    }
}
