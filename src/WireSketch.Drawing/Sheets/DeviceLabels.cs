using System.Text.RegularExpressions;
using WireSketch.Language;
using WireSketch.Language.Kinds;

namespace WireSketch.Drawing.Sheets;

/// <summary>What is written at a device: its name, what it is, and what is set on it.</summary>
internal static partial class DeviceLabels
{
    /// <summary>A space at which no line is broken.</summary>
    public const char Unbroken = '\u00a0';

    /// <summary>An id as a name: <c>seat-bolt</c> is Seat bolt.</summary>
    public static string Name(string id)
    {
        var words = id.Replace('-', ' ').Replace('_', ' ');
        return words.Length == 0 ? id : string.Concat(char.ToUpperInvariant(words[0]).ToString(), words.AsSpan(1));
    }

    /// <summary>What it is in few words, without what its name already says.</summary>
    public static IEnumerable<string> Captions(Gear gear, Audience audience)
    {
        var what = What(gear, audience);
        var name = Name(gear.Id);
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
    public static IEnumerable<string> Settings(Gear gear) => gear switch
    {
        Amplifier a => Of(a.Settings).Concat(a.Channels.SelectMany(c => Of(c.Settings).Select(s => $"{c.Name.Value}: {s}"))),
        Processor p => Of(p.Settings).Concat(p.Outputs.SelectMany(g => Of(g.Settings).Select(s => $"{g.Name.Value}: {s}"))),
        _ => [],
    };

    public static DeviceSymbol Sign(Gear gear) => gear switch
    {
        Battery => Sheets.DeviceSymbol.Battery,
        Alternator => Sheets.DeviceSymbol.Alternator,
        GeneralSource => Sheets.DeviceSymbol.Source,
        Capacitor => Sheets.DeviceSymbol.Capacitor,
        ProtectiveDevice { Breaker: true } => Sheets.DeviceSymbol.Breaker,
        ProtectiveDevice or FuseBlock => Sheets.DeviceSymbol.Fuse,
        DistributionBlock or BusBar => Sheets.DeviceSymbol.Block,
        ChassisPoint => Sheets.DeviceSymbol.Chassis,
        Isolator => Sheets.DeviceSymbol.Isolator,
        Relay => Sheets.DeviceSymbol.Relay,
        Switch => Sheets.DeviceSymbol.Switch,
        IgnitionSource or TapPoint => Sheets.DeviceSymbol.Tap,
        Connector => Sheets.DeviceSymbol.Plug,
        HeadUnit => Sheets.DeviceSymbol.HeadUnit,
        Processor or LevelAdapter => Sheets.DeviceSymbol.Processor,
        LoadResistor => Sheets.DeviceSymbol.Resistor,
        Amplifier => Sheets.DeviceSymbol.Amplifier,
        PassiveCrossover => Sheets.DeviceSymbol.Crossover,
        Speaker => Sheets.DeviceSymbol.Speaker,
        LevelControl => Sheets.DeviceSymbol.Knob,
        Load { KindWord: "lamp" } => Sheets.DeviceSymbol.Lamp,
        Load { KindWord: "motor" or "pump" } => Sheets.DeviceSymbol.Motor,
        Load { KindWord: "fridge" } => Sheets.DeviceSymbol.Cold,
        Load { KindWord: "inverter" } => Sheets.DeviceSymbol.Inverter,
        _ => Sheets.DeviceSymbol.None,
    };

    private static string What(Gear gear, Audience audience)
    {
        if (audience == Audience.Customer)
        {
            return Plain(gear);
        }

        return gear switch
        {
            Battery b => Join(b.Capacity?.Words ?? "", b.Chemistry?.Words ?? ""),
            Alternator a => a.Output?.Words ?? "",
            GeneralSource s => Join(s.Voltage?.Words ?? "", s.Current?.Words ?? ""),
            Capacitor c => c.Capacity?.Words ?? "",
            ProtectiveDevice p => p.Style?.Words ?? "",
            FuseBlock f => Join("fuse block", f.Style?.Words ?? ""),
            ChassisPoint c => Join(c.Surface?.Words ?? "", c.On is { Value: not MountingBase.Body } on ? on.Words : ""),
            BusBar b => Join(b.Kind, b.Rating?.Words ?? ""),
            Isolator i => Join("isolator", i.Type?.Words ?? "", i.Rating?.Words ?? ""),
            Relay r => Join("relay", r.Contact?.Words ?? ""),
            IgnitionSource i => Join("vehicle circuit", i.Live?.Words ?? "accessory"),
            TapPoint t => Join(t.Carries is { } c ? "vehicle " + c.Words : "vehicle wire", t.Color?.Value ?? ""),
            Amplifier { Class: { } letter } => $"amplifier, class {letter.Value}",
            Speaker { Subwoofer: true, EnclosureType: { } box } s => Join("subwoofer", box.Words + (s.Tuned is { } f ? " " + f.Words : "")),
            Speaker { Band: { } band } => band.Words,
            LoadResistor r => Join("load resistor", r.Resistance?.Words.Replace("ohm", "Ω", StringComparison.Ordinal) ?? ""),
            Load l => Join(l.Kind == "general load" ? "" : l.Kind, l.Power?.Words ?? l.Current?.Words ?? ""),
            LevelControl { To: { } to } => $"{gear.Kind}, plugs into {to.Value}",
            _ => gear.Kind,
        };
    }

    private static string Plain(Gear gear) => gear switch
    {
        ChassisPoint => "ground point",
        Processor => "sound processor",
        LevelAdapter => "signal adapter",
        IgnitionSource or TapPoint => "vehicle wiring",
        FuseBlock => "fuses",
        BusBar or DistributionBlock => "cable joint",
        Load { KindWord: "general load" } => "",
        _ => gear.Kind,
    };

    private static IEnumerable<string> Of(ChannelSettings s)
    {
        var filters = Join(
            Fact("HPF", s.HighPass?.Words), Fact("LPF", s.LowPass?.Words), Fact("subsonic", s.Subsonic?.Words));
        var rest = Join(
            Fact("gain", s.Gain?.Value), Fact("boost", s.Boost?.Value), Fact("polarity", s.Polarity?.Words), Fact("delay", s.Delay?.Words));
        var switches = Join(Fact("wake:", s.Wake?.Words), Fact("input load", s.InputLoad?.Words));
        return new[] { filters, rest, switches }.Where(line => line.Length > 0);
    }

    /// <summary>The same words, to be broken only after commas.</summary>
    public static string ByParts(string words) => words.Replace(' ', Unbroken).Replace("," + Unbroken, ", ", StringComparison.Ordinal);

    /// <summary>The same words, numbers bound to the units behind them.</summary>
    public static string WithUnits(string words) => NumberAndUnit().Replace(words, Unbroken.ToString());

    [GeneratedRegex(@"(?<=\d) (?=(?:[kmµM]?[AVWΩ]|[mc]?m|mm²|[mk]?ohm|AWG|ft|in|k?Hz|dB|m?s|h|min|Ah|C|%)(?:\W|$))")]
    private static partial Regex NumberAndUnit();

    private static string Fact(string name, string? value) => value is null ? "" : $"{name} {value}".Replace(' ', Unbroken);

    internal static string Join(params ReadOnlySpan<string> parts)
    {
        var joined = "";
        foreach (var part in parts)
        {
            joined += part.Length == 0 ? "" : joined.Length == 0 ? part : ", " + part;
        }

        return joined;
    }
}
