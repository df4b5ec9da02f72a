using WireSketch.Language;

namespace WireSketch.Documents.Lists;

/// <summary>A device in the words of a list.</summary>
internal static class DeviceNames
{
    /// <summary>Maker and model if they are known; else the part, else the kind; with what tells it from others of its kind.</summary>
    public static string Item(Gear gear)
    {
        var name = string.Join(' ', new[] { gear.Facts.Make?.Value, gear.Facts.Model?.Value }.OfType<string>());
        var facts = string.Join(", ", gear.Listing.Facts);
        var kind = facts.Length == 0 ? gear.Kind : $"{gear.Kind}, {facts}";
        return name.Length > 0 ? $"{name} ({kind})" : gear.Facts.Part is { } part ? $"{kind} [{part.Value}]" : kind;
    }

    /// <summary>Whether it is a point on the vehicle, which nobody buys.</summary>
    public static bool IsPlaceOnVehicle(Gear gear) => gear.Listing.As == ListedAs.PlaceOnVehicle;
}
