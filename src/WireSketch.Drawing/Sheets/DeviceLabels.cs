using System.Text.RegularExpressions;
using WireSketch.Language;
using WireSketch.Language.Kinds;

namespace WireSketch.Drawing.Sheets;

/// <summary>What is written at a device: its name, what it is, and what is set on it.</summary>
internal static partial class DeviceLabels
{
    /// <summary>A space at which no line is broken.</summary>
    public const char Unbroken = '\u00a0';

    /// <summary>What it is in few words, without what its name already says.</summary>
    public static IEnumerable<string> Captions(Gear gear, Audience audience)
    {
        var what = audience == Audience.Customer ? gear.Drawing.PlainWords : gear.Drawing.Words;
        var name = gear.DisplayName;
        if (what.Length > 0 && !name.Contains(what, StringComparison.OrdinalIgnoreCase))
        {
            yield return ByParts(what);
        }

        if (gear.Facts.Place is { } place)
        {
            yield return place.Value;
        }

        if (audience == Audience.Technician && (gear.Facts.Model ?? gear.Facts.Make) is { } model)
        {
            yield return model.Value;
        }
    }

    /// <summary>What the installer sets on it, a fact a line.</summary>
    public static IEnumerable<string> Settings(Gear gear) =>
        gear.Drawing.Settings.SelectMany(x => Of(x.Settings).Select(s => x.Of.Length == 0 ? s : $"{x.Of}: {s}"));

    private static IEnumerable<string> Of(ChannelSettings s)
    {
        var filters = GearDrawing.Join(
            Fact("HPF", s.HighPass?.Words), Fact("LPF", s.LowPass?.Words), Fact("subsonic", s.Subsonic?.Words));
        var rest = GearDrawing.Join(
            Fact("gain", s.Gain?.Value), Fact("boost", s.Boost?.Value), Fact("polarity", s.Polarity?.Words), Fact("delay", s.Delay?.Words));
        var switches = GearDrawing.Join(Fact("wake:", s.Wake?.Words), Fact("input load", s.InputLoad?.Words));
        return new[] { filters, rest, switches }.Where(line => line.Length > 0);
    }

    /// <summary>The same words, to be broken only after commas.</summary>
    public static string ByParts(string words) => words.Replace(' ', Unbroken).Replace("," + Unbroken, ", ", StringComparison.Ordinal);

    /// <summary>The same words, numbers bound to the units behind them.</summary>
    public static string WithUnits(string words) => NumberAndUnit().Replace(words, Unbroken.ToString());

    [GeneratedRegex(@"(?<=\d) (?=(?:[kmµM]?[AVWΩ]|[mc]?m|mm²|[mk]?ohm|AWG|ft|in|k?Hz|dB|m?s|h|min|Ah|C|%)(?:\W|$))")]
    private static partial Regex NumberAndUnit();

    private static string Fact(string name, string? value) => value is null ? "" : $"{name} {value}".Replace(' ', Unbroken);
}
