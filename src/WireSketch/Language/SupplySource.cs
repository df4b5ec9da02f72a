using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>A source of supply that gear offers. What kind of source it is, is one of the records below.</summary>
public abstract record SupplySource
{
    /// <summary>Where it gives its current.</summary>
    public required TerminalShape Plus { get; init; }

    /// <summary>Where its current comes home; null for a circuit of the vehicle, whose current comes home by the body.</summary>
    public required TerminalShape? Minus { get; init; }

    /// <summary>The states in which it can give current.</summary>
    public required ImmutableSortedSet<SystemState> LiveIn { get; init; }
}

/// <summary>A battery: gives at any time, and takes charge.</summary>
public sealed record BatterySource : SupplySource
{
    public Written<AmpHours>? Capacity { get; init; }

    public Written<Ohms>? Internal { get; init; }

    public Written<Chemistry>? Chemistry { get; init; }

    public Written<Volts>? Rest { get; init; }
}

/// <summary>
/// An alternator: holds its voltage up to its output. Without a wire at its plus the vehicle's own lead takes it to the starter battery.
/// </summary>
public sealed record AlternatorSource : SupplySource
{
    /// <summary>Output when hot, at speed.</summary>
    public Written<Amps>? Output { get; init; }

    /// <summary>Output with the engine idling.</summary>
    public Written<Amps>? Idle { get; init; }

    public Written<Volts>? Regulated { get; init; }
}

/// <summary>A charger from solar, shore or another battery: holds its voltage up to its current.</summary>
public sealed record ChargerSource : SupplySource
{
    public Written<Volts>? Voltage { get; init; }

    public Written<Amps>? Current { get; init; }

    /// <summary>Share of the time in which it gives that.</summary>
    public Written<Share>? Duty { get; init; }

    /// <summary>Time in a day in which it gives that.</summary>
    public Written<Seconds>? Hours { get; init; }
}

/// <summary>A circuit of the vehicle that gear is wired to: its volts are those of the starter battery unless it states its own.</summary>
public sealed record VehicleCircuit : SupplySource
{
    public Written<Volts>? Voltage { get; init; }

    /// <summary>The most that may be taken from it.</summary>
    public Written<Amps>? Limit { get; init; }

    /// <summary>Carries a turn-on signal and is no supply for a load.</summary>
    public required bool IsSignalOnly { get; init; }

    /// <summary>Live only while the starter turns.</summary>
    public required bool IsStartCircuit { get; init; }
}
