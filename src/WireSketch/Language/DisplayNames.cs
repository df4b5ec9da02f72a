using System.Collections.Frozen;

namespace WireSketch.Language;

/// <summary>Names for people, made from ids where none is written.</summary>
internal static class DisplayNames
{
    /// <summary>Short words that the trade writes in capitals (common practice, no published source).</summary>
    private static readonly FrozenSet<string> Capitals = new[]
    {
        "ac", "agm", "am", "cb", "cd", "dab", "dc", "dsp", "dvd", "ecu", "fm", "gps", "hdmi", "hid", "hvac", "led", "mppt", "obd", "pwm",
        "rca", "rgb", "tv", "uhf", "usb", "vhf",
    }.ToFrozenSet(StringComparer.OrdinalIgnoreCase);

    /// <summary>An id as a name: <c>seat-stud</c> is Seat stud; a polarity takes its kind along: <c>minus</c> is Negative bus.</summary>
    public static string Of(string id, string kind)
    {
        var words = Words(id);
        if (words.Length > 0 && Polarity(words[0]) is { } polarity && words[1..].All(w => w.All(char.IsAsciiDigit)))
        {
            words = [polarity, kind == "bus bar" ? "bus" : kind, .. words[1..]];
        }

        var name = Join(words);
        return name.Length == 0 ? id : char.ToUpperInvariant(name[0]) + name[1..];
    }

    /// <summary>An id within a sentence or a heading: hyphens as spaces, the trade's short words in capitals.</summary>
    public static string Phrase(string id) => Join(Words(id)) is { Length: > 0 } phrase ? phrase : id;

    /// <summary>The name with the id behind it, where the id cannot be read from the name.</summary>
    public static string WithId(Gear gear) =>
        string.Equals(gear.DisplayName, Phrase(gear.Id), StringComparison.OrdinalIgnoreCase)
            ? gear.DisplayName
            : $"{gear.DisplayName} ({gear.Id})";

    private static string[] Words(string id) => id.Split(['-', '_', ' '], StringSplitOptions.RemoveEmptyEntries);

    private static string Join(string[] words) =>
        string.Join(' ', words.Select(w => Capitals.Contains(w) ? w.ToUpperInvariant() : w)).Replace("DC DC", "DC-DC", StringComparison.Ordinal);

    private static string? Polarity(string word) => word.ToLowerInvariant() switch
    {
        "minus" or "negative" => "negative",
        "plus" or "positive" => "positive",
        _ => null,
    };
}
