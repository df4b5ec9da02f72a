using System.Globalization;
using WireSketch.Tables;
using WireSketch.Testing;

namespace WireSketch.Tests.Electrical.Worked;

/// <summary>A row of Data/worked-examples.csv: textbook, handbook and closed-form examples, each with its source.</summary>
internal sealed record WorkedExample(string Id, double Expected, string Tolerance, string Source)
{
    public static IReadOnlyDictionary<string, WorkedExample> All { get; } =
        CsvTable.Parse(Repository.Read("tests/WireSketch.Tests/Data/worked-examples.csv")).Rows
            .Where(r => double.TryParse(r["expected"], NumberStyles.Float, CultureInfo.InvariantCulture, out _))
            .ToDictionary(
                r => r["id"],
                r => new WorkedExample(r["id"], r.Number("expected"), r["tolerance"], r["source"]),
                StringComparer.Ordinal);

    /// <summary>Compares within the row's own tolerance; what is exact on paper is exact to the rounding of a double.</summary>
    public static void Check(string id, double computed)
    {
        var row = All[id];
        var words = row.Tolerance.Split(' ');
        var allowed = words[0] switch
        {
            "abs" => double.Parse(words[1], CultureInfo.InvariantCulture),
            "rel" => double.Parse(words[1], CultureInfo.InvariantCulture) * Math.Abs(row.Expected),
            _ => 1e-12 * Math.Abs(row.Expected),
        };
        Assert.True(
            Math.Abs(computed - row.Expected) <= allowed,
            $"{id}: {computed:R}, not {row.Expected:R} within {allowed:g3} ({row.Source})");
    }
}
