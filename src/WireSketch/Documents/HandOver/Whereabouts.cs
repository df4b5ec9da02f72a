using WireSketch.Language;

namespace WireSketch.Documents.HandOver;

/// <summary>Where a device sits, in the words of the spec: its zone, then its place.</summary>
internal static class Whereabouts
{
    /// <summary>Empty where the spec says neither.</summary>
    public static string Of(Gear gear) => string.Join(", ", new[] { gear.ZoneName, gear.Facts.Place?.Value }.OfType<string>());
}
