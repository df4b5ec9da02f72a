using WireSketch.Language.Kinds;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Electrical.Energy;

/// <summary>How a load's draw follows the voltage.</summary>
internal enum LoadModelKind
{
    Power,
    Current,
    Resistance,
}

/// <summary>What a device takes in one state: watts, amps or ohms according to its kind.</summary>
internal readonly record struct LoadModel(LoadModelKind Kind, double Size)
{
    public static LoadModel Nothing { get; } = new(LoadModelKind.Current, 0);

}

/// <summary>
/// What every device takes in every state. An amplifier takes its output power over its efficiency; where nothing says what it gives,
/// what its own fuse lets through (common practice, no published source). Music is a share of full power, and never less than its idle draw.
/// </summary>
internal static class LoadModels
{
    private static readonly Volts Rated = Assume.Rated.Value;

    /// <summary>What a device takes.</summary>
    /// <param name="device">The device.</param>
    /// <param name="state">The state.</param>
    /// <param name="output">What its channels give at full output, for an amplifier.</param>
    public static LoadModel Of(Gear device, SystemState state, ChannelOutput output) => device switch
    {
        Amplifier a => OfAmplifier(a, state, output),
        HeadUnit h => state == SystemState.Standby ? Asleep(h.Standby?.Value) : Power((h.Current?.Value ?? Assume.HeadUnit.Value) * Rated),
        Processor p => state == SystemState.Standby ? Asleep(p.Standby?.Value) : Power((p.Supply.Current?.Value ?? Assume.Processor.Value) * Rated),
        LevelAdapter l => state == SystemState.Standby ? LoadModel.Nothing : new(LoadModelKind.Current, (l.Current?.Value ?? Assume.LevelAdapter.Value).Value),
        Relay r => new(LoadModelKind.Resistance, Rated.Value / TurnOn.TurnOnPaths.CoilCurrent(r).Value),
        Load l => OfLoad(l, state),
        _ => LoadModel.Nothing,
    };

    /// <summary>The share of the time that a load runs: its duty, times its hours of the day.</summary>
    public static double ShareOfTime(Gear device) => device is Load l
        ? (l.Duty?.Value.Value ?? 1) * (l.Hours is { } h ? Math.Min(1, h.Value.Value / 86400) : 1)
        : 1;

    /// <summary>Efficiency at full output: as written, else by its class.</summary>
    public static Share EfficiencyOf(Amplifier amplifier) =>
        amplifier.Supply.Efficiency?.Value
        ?? (string.Equals(amplifier.Class?.Value, "D", StringComparison.OrdinalIgnoreCase) ? Assume.EfficiencyClassD : Assume.Efficiency).Value;

    /// <summary>The amplifier's own fuse, where it is all that says what it takes; null where its power or its current is stated.</summary>
    public static Written<Amps>? BoundingFuse(Amplifier amplifier, ChannelOutput output) =>
        amplifier.Supply.Current is null && !output.IsWhole ? amplifier.Supply.Fuse : null;

    /// <summary>Nothing says what the amplifier takes: neither power for its loads, nor its current, nor a fuse of its own.</summary>
    public static bool IsUnknown(Amplifier amplifier, ChannelOutput output) =>
        amplifier.Supply is { Current: null, Fuse: null } && !output.IsWhole;

    private static LoadModel OfAmplifier(Amplifier a, SystemState state, ChannelOutput output)
    {
        if (state == SystemState.Standby)
        {
            return Asleep(a.Standby?.Value);
        }

        var idle = (a.Idle?.Value ?? Assume.AmplifierIdle.Value).Value * Rated.Value;
        var given = output.Stated.Value / EfficiencyOf(a).Value;
        var full = a.Supply.Current is { } stated ? stated.Value.Value * Rated.Value
            : BoundingFuse(a, output) is { } fuse ? Math.Max(given, fuse.Value.Value * Rated.Value) : given;
        return Power(new Watts(Math.Max(idle, state == SystemState.FullOutput ? full : full * Assume.Music.Value.Value)));
    }

    private static LoadModel OfLoad(Load l, SystemState state)
    {
        if (state == SystemState.Standby && !l.Facts.AlwaysLive)
        {
            return Asleep(l.Standby?.Value);
        }

        var rated = (l.Rated?.Value ?? Rated).Value;
        double? watts = l.Power is { } p ? p.Value.Value : l.Current is { } i ? i.Value.Value * rated : l.Resistance is { } r ? rated * rated / r.Value.Value : null;
        if (watts is not { } w || w <= 0)
        {
            return LoadModel.Nothing;
        }

        return Behavior(l) switch
        {
            DrawLaw.Resistance => new(LoadModelKind.Resistance, rated * rated / w),
            DrawLaw.Current => new(LoadModelKind.Current, w / rated),
            _ => new(LoadModelKind.Power, w),
        };
    }

    /// <summary>What of its draw stays the same: as written, else as its kind behaves.</summary>
    public static DrawLaw Behavior(Load l) => l.Behaves?.Value ?? l switch
    {
        { Resistance: not null } or { KindWord: "lamp" } => DrawLaw.Resistance,
        { KindWord: "motor" or "pump" } => DrawLaw.Current,
        _ => DrawLaw.Power,
    };

    private static LoadModel Power(Watts watts) => new(LoadModelKind.Power, watts.Value);

    private static LoadModel Asleep(Amps? amps) => new(LoadModelKind.Current, amps?.Value ?? 0);
}
