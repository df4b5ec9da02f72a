using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Documents.Lists;

/// <summary>Devices to buy: what is not in the vehicle yet. Like ones share a line.</summary>
internal static class DeviceLines
{
    public static IEnumerable<PartLine> Of(InstalledSystem install) => install.Spec.Gear
        .Where(g => !g.InVehicle && !DeviceNames.IsPlaceOnVehicle(g) && g.Listing.As != ListedAs.Fuse)
        .GroupBy(g => (Item: DeviceNames.Item(g), Price: g.Facts.Price?.Value))
        .Select(g => new PartLine(
            PartGroup.Devices, g.Key.Item, g.Sum(d => d.Facts.Quantity), PartLine.Pieces, g.Key.Price, [.. g.Select(Where)],
            string.Join("; ", g.Select(d => d.Facts.Notes?.Value).OfType<string>().Distinct())));

    private static string Where(Gear gear) =>
        gear.Facts.Place is { } place ? $"{gear.Id} ({place.Value})" : gear.Zone is { } zone ? $"{gear.Id} ({zone})" : gear.Id;
}
