using WireSketch.Language;
using WireSketch.Language.Kinds;
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
/// what its own fuse lets through (common practice, no published source). Music is a share of full power, and never less than its idle
/// draw.
/// </summary>
internal static class LoadModels
{
    private static readonly Volts Rated = Assume.Rated.Value;

    /// <summary>What a power input takes.</summary>
    /// <param name="takes">What the spec states of it.</param>
    /// <param name="state">The state.</param>
    /// <param name="output">What its device's channels give at full output.</param>
    public static LoadModel Of(LoadBehavior takes, SystemState state, ChannelOutput output) => takes switch
    {
        OutputDraw a => OfOutput(a, state, output),
        ElectronicsDraw e => state == SystemState.Standby ? Asleep(e.Standby?.Value) : Power((e.Current?.Value ?? e.Usual) * Rated),
        SmallCircuitDraw s => state == SystemState.Standby
            ? LoadModel.Nothing
            : new(LoadModelKind.Current, (s.Current?.Value ?? s.Usual).Value),
        CoilDraw c => new(LoadModelKind.Resistance, Rated.Value / CoilCurrent(c).Value),
        ApplianceDraw l => OfAppliance(l, state),
        _ => throw new System.Diagnostics.UnreachableException(),
    };

    /// <summary>Coil current of a relay at 12 V where nobody wrote it (common practice, no published source).</summary>
    public static Amps CoilCurrent(CoilDraw coil) =>
        coil.Current?.Value ?? (coil.Resistance is { } r ? new Volts(12) / r.Value : new Amps(0.15));

    /// <summary>The share of the time that a load runs: its duty, times its hours of the day.</summary>
    public static double ShareOfTime(LoadBehavior takes) => takes is ApplianceDraw l ? EnergyBalance.ShareOfTime(l.Duty, l.Hours) : 1;

    /// <summary>Efficiency at full output: as written, else by its class.</summary>
    public static Share EfficiencyOf(OutputDraw amplifier) =>
        amplifier.Efficiency?.Value ?? (amplifier.IsClassD ? Assume.EfficiencyClassD : Assume.Efficiency).Value;

    /// <summary>The amplifier's own fuse, where it is all that says what it takes; null where its power or its current is stated.</summary>
    public static Written<Amps>? BoundingFuse(OutputDraw amplifier, ChannelOutput output) =>
        amplifier.Current is null && !output.IsWhole ? amplifier.Fuse : null;

    /// <summary>Nothing says what the amplifier takes: neither power for its loads, nor its current, nor a fuse of its own.</summary>
    public static bool IsUnknown(OutputDraw amplifier, ChannelOutput output) =>
        amplifier is { Current: null, Fuse: null } && !output.IsWhole;

    private static LoadModel OfOutput(OutputDraw a, SystemState state, ChannelOutput output)
    {
        if (state == SystemState.Standby)
        {
            return Asleep(a.Standby?.Value);
        }

        var idle = (a.Idle?.Value ?? Assume.AmplifierIdle.Value).Value * Rated.Value;
        var given = output.Stated.Value / EfficiencyOf(a).Value;
        var full = a.Current is { } stated ? stated.Value.Value * Rated.Value
            : BoundingFuse(a, output) is { } fuse ? Math.Max(given, fuse.Value.Value * Rated.Value) : given;
        return Power(new Watts(Math.Max(idle, state == SystemState.FullOutput ? full : full * Assume.Music.Value.Value)));
    }

    private static LoadModel OfAppliance(ApplianceDraw l, SystemState state)
    {
        if (state == SystemState.Standby && !l.AlwaysLive)
        {
            return Asleep(l.Standby?.Value);
        }

        var rated = (l.Rated?.Value ?? Rated).Value;
        double? watts = l.Power is { } p ? p.Value.Value
            : l.Current is { } i ? i.Value.Value * rated
            : l.Resistance is { } r ? rated * rated / r.Value.Value
            : null;
        if (watts is not { } w || w <= 0)
        {
            return LoadModel.Nothing;
        }

        return l.Law switch
        {
            DrawLaw.Resistance => new(LoadModelKind.Resistance, rated * rated / w),
            DrawLaw.Current => new(LoadModelKind.Current, w / rated),
            _ => new(LoadModelKind.Power, w),
        };
    }

    private static LoadModel Power(Watts watts) => new(LoadModelKind.Power, watts.Value);

    private static LoadModel Asleep(Amps? amps) => new(LoadModelKind.Current, amps?.Value ?? 0);
}
