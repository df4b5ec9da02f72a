using System.Globalization;
using WireSketch.Language;
using WireSketch.Language.Kinds;

namespace WireSketch.Documents.Lists;

/// <summary>A device in the words of a list.</summary>
internal static class DeviceNames
{
    /// <summary>Maker and model if they are known; else the part, else the kind; with what tells it from others of its kind.</summary>
    public static string Item(Gear gear)
    {
        var name = string.Join(' ', new[] { gear.Facts.Make?.Value, gear.Facts.Model?.Value }.OfType<string>());
        var facts = Facts(gear);
        var kind = facts.Length == 0 ? gear.Kind : $"{gear.Kind}, {facts}";
        return name.Length > 0 ? $"{name} ({kind})" : gear.Facts.Part is { } part ? $"{kind} [{part.Value}]" : kind;
    }

    /// <summary>Whether it is a point on the vehicle, which nobody buys.</summary>
    public static bool IsPlaceOnVehicle(Gear gear) => gear is ChassisPoint or TapPoint or IgnitionSource;

    private static string Facts(Gear gear) => string.Join(", ", new[]
    {
        gear switch
        {
            Battery b => b.Chemistry?.Words,
            Capacitor c => c.Capacity?.Words,
            Speaker s => s.Coils?.Words,
            ProtectiveDevice { Breaker: true } p => p.Rating?.Words,
            Isolator i => i.Type?.Words,
            Relay r => r.Contact?.Words,
            Amplifier a => Count(a.Channels.Length, "channel"),
            FuseBlock f => Count(f.Outputs, "output"),
            DistributionBlock d => Count(d.Outputs, "output"),
            BusBar { Studs: { } studs } => Count(studs.Value, "stud"),
            LevelAdapter a => Count(a.Channels, "channel"),
            LoadResistor r => r.Resistance?.Words,
            LevelControl { To: { } to } => $"plugs into {to.Value}",
            Connector c => c.Cavities == 1 ? "1 cavity" : string.Create(CultureInfo.InvariantCulture, $"{c.Cavities} cavities"),
            _ => null,
        },
        gear switch
        {
            Battery b => b.Capacity?.Words,
            Alternator a => a.Output?.Words,
            GeneralSource s => s.Current?.Words,
            Speaker s => s.Handles?.Words,
            ProtectiveDevice { Breaker: true } p => $"{p.Reset?.Words ?? "manual"} reset",
            Isolator i => i.Rating?.Words,
            FuseBlock f => f.Rating?.Words,
            DistributionBlock d => d.Rating?.Words,
            BusBar b => b.Rating?.Words,
            Switch s => s.Rating?.Words,
            LoadResistor r => r.Handles?.Words,
            Capacitor { Internal: { } inside } => $"{inside.Words} inside",
            Load l => l.Power?.Words ?? l.Current?.Words ?? l.Resistance?.Words,
            Connector c => c.Rating?.Words,
            _ => null,
        },
    }.OfType<string>());

    private static string Count(int number, string what) => string.Create(CultureInfo.InvariantCulture, $"{number} {what}{(number == 1 ? "" : "s")}");
}
