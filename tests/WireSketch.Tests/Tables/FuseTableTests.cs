using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Tests.Tables;

/// <summary>Fuses against the rows of fuse-ratings, fuse-time-current and fuse-type-data; the source of each stands in its row.</summary>
public sealed class FuseTableTests
{
    [Theory]
    [InlineData(FuseStyle.BladeMini, "2 3 4 5 7.5 10 15 20 25 30")]
    [InlineData(FuseStyle.Blade, "1 2 3 4 5 7.5 10 15 20 25 30 35 40")]
    [InlineData(FuseStyle.BladeMaxi, "20 25 30 35 40 50 60 70 80 100")]
    public void Blades_come_in_the_ratings_of_public_lists(FuseStyle style, string ratings) =>
        Assert.Equal(
            ratings.Split(' ').Select(r => new Amps(double.Parse(r, System.Globalization.CultureInfo.InvariantCulture))),
            FuseTable.RatingsOf(style));

    /// <summary>
    /// At a published point its own limits hold, on both sides: of several rows for one point the widest, and no limit counts as the
    /// widest.
    /// </summary>
    [Fact]
    public void Every_limit_of_opening_time_holds_at_its_own_point()
    {
        var points = CsvTable.Own("fuse-time-current").Rows
            .GroupBy(r =>
                (
                    Style: r["family"] switch
                    {
                        "blade-mini" =>
                        FuseStyle.BladeMini,
                        "blade-maxi" => FuseStyle.BladeMaxi,
                        _ => FuseStyle.Blade
                    },
                    Percent: r.Number("percent_of_rating")))
            .ToArray();
        Assert.True(points.Length > 10);
        foreach (var point in points)
        {
            var window = FuseTable.OpeningOf(point.Key.Style, point.Key.Percent / 100);
            var least = point.Min(r => r.NumberOrNone("min_s") ?? 0);
            var most = point.Max(r => r.NumberOrNone("max_s") ?? double.PositiveInfinity);
            var where = $"{point.Key}: {window}";
            Assert.False(window.IsStandIn, where);
            Assert.True(least == 0 || Math.Abs((window.Least?.Value ?? 0) - least) < 1e-9, where);
            Assert.True(
                double.IsPositiveInfinity(most) ? window.Most is null : window.Most is { } t && Math.Abs(t.Value - most) < 1e-9,
                where);
        }
    }

    [Fact]
    public void At_its_rating_and_a_little_above_no_fuse_need_open()
    {
        Assert.All(FuseTable.Styles, s => Assert.Null(FuseTable.OpensWithin(s, 1)));
        Assert.All(FuseTable.Styles, s => Assert.Null(FuseTable.OpensWithin(s, 1.2)));
    }

    [Fact]
    public void More_current_never_opens_a_fuse_later()
    {
        foreach (var style in FuseTable.Styles)
        {
            var last = double.PositiveInfinity;
            for (var multiple = 1.0; multiple < 40; multiple *= 1.07)
            {
                var most = FuseTable.OpensWithin(style, multiple)?.Value ?? double.PositiveInfinity;
                Assert.True(most <= last, $"{style} at {multiple}");
                last = most;
            }
        }
    }

    [Fact]
    public void Beyond_the_last_point_the_energy_stays()
    {
        var (at10, at20) = (
            FuseTable.OpensWithin(FuseStyle.Blade, 10)!.Value.Value,
            FuseTable.OpensWithin(FuseStyle.Blade, 20)!.Value.Value);
        Assert.Equal(at10 * 100, at20 * 400, 1e-9);
    }

    [Fact]
    public void The_smallest_construction_that_can_break_the_fault_is_taken()
    {
        Assert.Equal(FuseStyle.BladeMini, FuseTable.StyleFor(new(30), new(900)));
        Assert.Equal(FuseStyle.Strip, FuseTable.StyleFor(new(60), new(1500)));

        // No figure is known for wafers: they come before what is known to be too weak.
        Assert.Equal(FuseStyle.Wafer, FuseTable.StyleFor(new(60), new(2500)));
        Assert.Null(FuseTable.StyleFor(new(12.5), new(100)));
    }

    [Fact]
    public void Resistance_is_that_of_the_type_sheet_where_there_is_one()
    {
        // 0.075 V at 40 A of one maker's large blade; its cold resistance would give a quarter less.
        Assert.Equal(0.075 / 40, FuseTable.ResistanceOf(FuseStyle.BladeMaxi, new(40)).Value, 1e-12);
        Assert.Equal(0.0019, FuseTable.ResistanceOf(FuseStyle.BladeMaxi, new(30)).Value, 1e-12);

        // Where there is none: cold, the four sheets seen lose 56 to 60 mV at rated current.
        Assert.All(
            CsvTable.Own("fuse-type-data").Rows.Where(r => r["quantity"] == "cold_resistance"),
            r => Assert.InRange(r.Number("value") * r.Number("rating_a"), 0.0559, 0.0601));
        Assert.Equal(0.058 / 100, FuseTable.ResistanceOf(FuseStyle.Strip, new(100)).Value, 1e-12);
        Assert.Equal(0.0005, FuseTable.ResistanceOf(null, null).Value, 1e-12);
    }
}
