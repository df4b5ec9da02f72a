using WireSketch.Electrical.Energy;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>What the spec says of sources and vehicle, else what is assumed.</summary>
internal static class Defaults
{
    public static Volts Rest(Wiring wiring, BatterySource battery) => battery.Rest?.Value ?? battery.Chemistry?.Value switch
    {
        Chemistry.Agm or Chemistry.Gel => Assume.RestingAgm.Value,
        Chemistry.Lithium => Assume.RestingLithium.Value,
        _ => Rest(wiring),
    };

    /// <summary>Of the vehicle itself.</summary>
    public static Volts Rest(Wiring wiring) => wiring.Spec.Job.Vehicle.Rest?.Value ?? Assume.Resting.Value;

    public static Volts Running(Wiring wiring) => wiring.Spec.Job.Vehicle.Running?.Value ?? Assume.Running.Value;

    public static Amps BaseLoad(Wiring wiring) => wiring.Spec.Job.Vehicle.BaseLoad?.Value ?? Assume.BaseLoad.Value;

    public static Amps RestCurrent(Wiring wiring) => wiring.Spec.Job.Vehicle.RestCurrent?.Value ?? Assume.RestCurrent.Value;

    /// <summary>In inverse proportion to the capacity where nobody wrote it.</summary>
    public static Ohms Internal(BatterySource battery) =>
        battery.Internal?.Value ?? Assume.Internal.Value * (Assume.Capacity.Value / EnergyBalance.CapacityOf(battery));

    /// <summary>A charged battery takes little for each volt above rest. It is not the resistance by which it gives.</summary>
    public static Ohms Charging(BatterySource battery) =>
        new(Math.Max(Internal(battery).Value, 1 / (Assume.ChargePerVolt.Value * EnergyBalance.CapacityOf(battery).Value)));

    public static Volts Regulated(Wiring wiring, AlternatorSource alternator) => alternator.Regulated?.Value ?? Running(wiring);

    /// <summary>What an alternator can give in a state; null if nobody says.</summary>
    public static Amps? Output(Wiring wiring, AlternatorSource? alternator, SystemState state)
    {
        var vehicle = wiring.Spec.Job.Vehicle;
        Amps? full = alternator?.Output?.Value ?? vehicle.Alternator?.Value;
        Amps? half = full is { } f ? f * Assume.IdleOutput.Value.Value : null;
        return state switch
        {
            SystemState.FullOutput or SystemState.Music => full,
            SystemState.Idle => alternator?.Idle?.Value ?? (alternator?.Output is null ? vehicle.IdleOutput?.Value : null) ?? half,
            _ => new Amps(0),
        };
    }

    public static bool EngineRuns(SystemState state) => SystemStates.EngineRuns.Contains(state);
}
