using WireSketch.Language;
using WireSketch.Language.Kinds;

namespace WireSketch.Topology;

/// <summary>What a terminal is to the current: where it comes from, where it goes back to, what wakes by it.</summary>
internal static class TerminalRoles
{
    /// <summary>A device with two poles that gives current: battery, alternator, charger.</summary>
    public static bool IsSource(Gear? gear) => gear is Battery or Alternator or GeneralSource;

    /// <summary>A circuit of the vehicle that gives current against the body.</summary>
    public static bool IsVehicleCircuit(Gear? gear) => gear is IgnitionSource or TapPoint;

    /// <summary>The plus of a source.</summary>
    public static bool IsSourcePlus(Terminal t) => IsSource(t.Gear) && t.Shape.Name == "+";

    /// <summary>The minus of a source.</summary>
    public static bool IsSourceMinus(Terminal t) => IsSource(t.Gear) && t.Role == TerminalRole.Ground;

    /// <summary>What feeds loads: the plus of a source, an ignition circuit, a splice of the vehicle that is live.</summary>
    public static bool FeedsLoads(Terminal t) => IsSourcePlus(t) || t.Gear is IgnitionSource or TapPoint { Carries.Value: "constant" or "accessory" };

    /// <summary>What takes current back: the body, and the minus of a source.</summary>
    public static bool TakesBack(Terminal t) => t.Gear is null || IsSourceMinus(t);

    /// <summary>Any terminal of what gives current, or the body: it holds its volts whatever hangs on it.</summary>
    public static bool HoldsVolts(Terminal t) => t.Gear is null || IsOfSupply(t);

    /// <summary>Any terminal of a device or circuit that gives current.</summary>
    public static bool IsOfSupply(Terminal t) => IsSource(t.Gear) || IsVehicleCircuit(t.Gear);

    /// <summary>On the body or on a source's minus by its nature: a wire to it from a source's plus is a dead short.</summary>
    public static bool IsGround(Terminal t) =>
        t.Gear is null or ChassisPoint or BusBar { Ground: true } or TapPoint { Carries.Value: "ground" } || IsSourceMinus(t);

    /// <summary>What gives a turn-on signal.</summary>
    public static bool GivesTurnOn(Terminal t) => t.Gear switch
    {
        HeadUnit => t.Shape.Name == "remote",
        Processor or LevelAdapter => t.Shape.Name == "remote-out",
        IgnitionSource => true,
        TapPoint tap => tap.Carries?.Value is "control" or "accessory" or "constant",
        _ => IsSourcePlus(t),
    };

    /// <summary>Live with everything off.</summary>
    public static bool IsLiveAlways(Terminal t) =>
        t.Gear is Battery or GeneralSource or IgnitionSource { Live.Value: "constant" } or TapPoint { Carries.Value: "constant" };

    /// <summary>Inside a device the shields of its signal sockets sit on its ground.</summary>
    public static bool IsGroundInside(Terminal t) => (t.Role == TerminalRole.Line && t.Side == '-') || (t.Role == TerminalRole.Ground && t.Shape.Name == "-");
}
