using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Documents.Lists;

/// <summary>Time to fit what states its labor, for an estimate. Like devices share a line.</summary>
internal static class LaborLines
{
    private const double SecondsOfHour = 3600;

    public static IEnumerable<PartLine> Of(InstalledSystem install) => install.Spec.Gear.Where(g => g.Facts.Labor is { Value.Value: > 0 })
        .GroupBy(g => (Item: DeviceNames.Item(g), Time: g.Facts.Labor!.Value.Value.Value))
        .Select(g => new PartLine(
            PartGroup.Labor,
            $"fitting: {g.Key.Item}",
            Math.Round(g.Count() * g.Key.Time / SecondsOfHour, 2),
            "h",
            null,
            [.. g.Select(d => d.Id)],
            g.Count() == 1 ? "" : $"{Written(g.First())} each"));

    private static string Written(Gear gear) => gear.Facts.Labor!.Value.Words;
}
