using WireSketch.Language;
using WireSketch.Rules;

namespace WireSketch.Papers.Lists;

/// <summary>Time to fit what states its labour, for an estimate. Like devices share a line.</summary>
internal static class LabourLines
{
    private const double SecondsOfHour = 3600;

    public static IEnumerable<PartLine> Of(Install install) => install.Spec.Gear.Where(g => g.Facts.Labour is { Value.Value: > 0 })
        .GroupBy(g => (Item: GearWords.Item(g), Time: g.Facts.Labour!.Value.Value.Value))
        .Select(g => new PartLine(
            PartGroup.Labour, $"fitting: {g.Key.Item}", Math.Round(g.Count() * g.Key.Time / SecondsOfHour, 2), "h", null, [.. g.Select(d => d.Id)],
            g.Count() == 1 ? "" : $"{Written(g.First())} each"));

    private static string Written(Gear gear) => gear.Facts.Labour!.Value.Words;
}
