using WireSketch.Language;

namespace WireSketch.Topology;

/// <summary>What a terminal is to the current: where it comes from, where it goes back to, what wakes by it. Gear tells it.</summary>
internal static class TerminalRoles
{
    /// <summary>A device with two poles that gives current: battery, alternator, charger.</summary>
    public static bool IsSource(Gear? gear) => gear is not null && gear.Sources.Any(s => s.Minus is not null);

    /// <summary>A battery.</summary>
    public static bool IsBattery(Gear? gear) => gear is not null && gear.Sources.Any(s => s is BatterySource);

    /// <summary>A bolt on bare metal of the body.</summary>
    public static bool IsBodyBolt(Gear? gear) =>
        gear is not null && gear.Terminals.Any(t => gear.LandingAt(t).Form == LandingForm.BodyBolt);

    /// <summary>Stays charged after everything is off, and gives that back.</summary>
    public static bool HoldsCharge(Gear gear) => gear.Cautions.Contains(GearCaution.HoldsCharge);

    /// <summary>Has a coil that moves its contacts.</summary>
    public static bool HasCoil(Gear gear) => gear.PowerInputs.Any(p => p.Takes is CoilDraw);

    /// <summary>A point on the vehicle's own wiring.</summary>
    public static bool IsVehicleCircuit(Gear? gear) => gear?.Listing.Connection is not null;

    /// <summary>The plus of a source with two poles.</summary>
    public static bool IsSourcePlus(Terminal t) => SourceAt(t) is { Minus: not null };

    /// <summary>The minus of a source.</summary>
    public static bool IsSourceMinus(Terminal t) => t.Gear is not null && t.Gear.Sources.Any(s => s.Minus == t.Shape);

    /// <summary>What feeds loads: the plus of a source, a circuit of the vehicle that is more than a signal.</summary>
    public static bool FeedsLoads(Terminal t) => SourceAt(t) is { } source and not VehicleCircuit { IsSignalOnly: true };

    /// <summary>What takes current back: the body, and the minus of a source.</summary>
    public static bool TakesBack(Terminal t) => t.Gear is null || IsSourceMinus(t);

    /// <summary>Any terminal of what gives current, or the body: it holds its volts whatever hangs on it.</summary>
    public static bool HoldsVolts(Terminal t) => t.Gear is null || IsOfSupply(t);

    /// <summary>Any terminal of a device or circuit that gives current.</summary>
    public static bool IsOfSupply(Terminal t) => IsSource(t.Gear) || IsVehicleCircuit(t.Gear);

    /// <summary>
    /// On the body or on a source's minus by its nature: a wire to it from a source's plus is a dead short. A device that is its own ground
    /// terminal is such a point: a chassis point, a ground block, a ground of the vehicle's wiring.
    /// </summary>
    public static bool IsGround(Terminal t) =>
        t.Gear is null || (t.Role == TerminalRole.Ground && t.Shape.Name.Length == 0) || IsSourceMinus(t);

    /// <summary>What gives a turn-on signal: a source of supply, or an output by which a device switches others on.</summary>
    public static bool GivesTurnOn(Terminal t) =>
        SourceAt(t) is not null || (t.Gear is not null && t.Gear.TurnOnOutputs.Any(o => o.Terminal == t.Shape));

    /// <summary>Live with everything off.</summary>
    public static bool IsLiveAlways(Terminal t) => SourceAt(t)?.LiveIn.Contains(SystemState.Standby) ?? false;

    /// <summary>Inside a device the shields of its signal sockets sit on its ground.</summary>
    public static bool IsGroundInside(Terminal t) =>
        (t.Role == TerminalRole.Line && t.Side == '-') || (t.Role == TerminalRole.Ground && t.Shape.Name == "-");

    private static SupplySource? SourceAt(Terminal t) => t.Gear?.SourceAt(t.Shape);
}
