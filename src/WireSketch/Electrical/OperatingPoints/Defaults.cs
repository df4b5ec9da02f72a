using WireSketch.Electrical.Energy;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>What is taken where the spec is silent. All of it common practice, no published source, unless said otherwise.</summary>
internal static class Defaults
{
    /// <summary>Inside a factory lead between battery and a vehicle circuit.</summary>
    public static readonly Ohms FactoryCircuit = new(0.02);

    /// <summary>The switch inside a device that feeds its remote output.</summary>
    public static readonly Ohms RemoteSwitch = new(1);

    /// <summary>Droop of a regulator, terminal to terminal.</summary>
    public static readonly Ohms Regulator = new(0.0005);

    /// <summary>Contacts of a switch, relay or isolator.</summary>
    public static readonly Ohms Contact = new(0.0005);

    /// <summary>What a diode adds to its drop.</summary>
    public static readonly Ohms DiodeSlope = new(0.002);

    public static readonly Ohms FactoryLead = new(0.001);

    /// <summary>What a remote input takes.</summary>
    public static readonly Amps Remote = new(0.02);

    public static Volts Rest(Wiring wiring, BatterySource battery) => battery.Rest?.Value ?? battery.Chemistry?.Value switch
    {
        Chemistry.Agm or Chemistry.Gel => new(12.8),
        Chemistry.Lithium => new(13.2),
        _ => wiring.Spec.Job.Vehicle.Rest?.Value ?? new(12.6),
    };

    public static Volts Running(Wiring wiring) => wiring.Spec.Job.Vehicle.Running?.Value ?? new(14.2);

    public static Amps BaseLoad(Wiring wiring) => wiring.Spec.Job.Vehicle.BaseLoad?.Value ?? new(25);

    /// <summary>What a parked vehicle takes by itself: 20 to 50 mA are usual.</summary>
    public static Amps RestCurrent(Wiring wiring) => wiring.Spec.Job.Vehicle.RestCurrent?.Value ?? new(0.03);

    /// <summary>8 mohm for 60 Ah, in inverse proportion to the capacity.</summary>
    public static Ohms Internal(BatterySource battery) => battery.Internal?.Value ?? new(0.008 * 60 / EnergyBalance.CapacityOf(battery).Value);

    /// <summary>
    /// A charged battery takes little: some 6 % of its capacity, in amperes, for each volt above rest. It is not the resistance by which it gives.
    /// </summary>
    public static Ohms Charging(BatterySource battery) => new(Math.Max(Internal(battery).Value, 1 / (0.06 * EnergyBalance.CapacityOf(battery).Value)));

    public static Volts Regulated(Wiring wiring, AlternatorSource alternator) => alternator.Regulated?.Value ?? Running(wiring);

    /// <summary>What an alternator can give in a state; null if nobody says.</summary>
    public static Amps? Output(Wiring wiring, AlternatorSource? alternator, SystemState state)
    {
        var vehicle = wiring.Spec.Job.Vehicle;
        Amps? full = alternator?.Output?.Value ?? vehicle.Alternator?.Value;
        Amps? half = full is { } f ? f / 2 : null;
        return state switch
        {
            SystemState.FullOutput or SystemState.Music => full,
            SystemState.Idle => alternator?.Idle?.Value ?? (alternator?.Output is null ? vehicle.IdleOutput?.Value : null) ?? half,
            _ => new Amps(0),
        };
    }

    public static bool EngineRuns(SystemState state) => SystemStates.EngineRuns.Contains(state);
}
