using System.Text.Json;
using WireSketch.Papers.Reports;
using WireSketch.Testing;

namespace WireSketch.Tests.Papers.Reports;

public sealed class CalculationReportTests
{
    // 4 AWG, 17 ft less 12 in: 4.8768 m of 21.15 mm² (ASTM B258) at 0.017241 ohm·mm²/m (IEC 60028) and 2 % lay: 4.055 mohm.
    [Fact]
    public void A_result_can_be_followed_by_hand()
    {
        var report = CalculationReport.From(Built.Shipped("one-amplifier").Install);
        var piece = report.Chapters.Single(c => c.Id == "conductors").Results.Single(r => r.Subject == "P1-2");
        Assert.Equal(0.017241 * 4.8768 / 21.15 * 1.02, piece.Values.Single(v => v.Name == "R20").Value!.Value, 0.5e-6);
        Assert.Equal("line 40", piece.Inputs.Single(i => i.Name == "size").Origin);
        Assert.Equal("line 40, divided at the fuse", piece.Inputs.Single(i => i.Name == "length").Origin);
    }

    [Fact]
    public void Defaults_say_what_they_rest_on()
    {
        var report = CalculationReport.From(Built.Shipped("one-amplifier").Install);
        var origins = report.Chapters.SelectMany(c => c.Results).SelectMany(r => r.Inputs).Where(i => i.Origin.StartsWith("default", StringComparison.Ordinal)).ToArray();
        Assert.Contains(origins, i => i.Origin == "default: 80 C (common practice)");
        Assert.All(origins, i => Assert.True(i.Origin.Length > "default: ".Length, i.Name));
    }

    [Theory]
    [InlineData("two-amplifiers", "parts/shop-parts.yaml line ")]
    [InlineData("camper", "line ")]
    public void What_comes_from_another_file_says_so(string spec, string place)
    {
        var report = CalculationReport.From(Built.Shipped(spec).Install);
        Assert.Contains(report.Chapters.SelectMany(c => c.Results).SelectMany(r => r.Inputs), i => i.Origin.StartsWith(place, StringComparison.Ordinal));
    }

    [Fact]
    public void The_report_for_programs_can_be_read_and_is_the_same_each_time()
    {
        foreach (var name in ShippedSpecs.Good)
        {
            var built = Built.Shipped(Path.GetFileName(name)[..^".wsk.yaml".Length]);
            var text = built.Text("report.json");
            using var json = JsonDocument.Parse(text);
            Assert.Equal(1, json.RootElement.GetProperty("version").GetInt32());
            Assert.Equal(text, built.Text("report.json"));
        }
    }
}
