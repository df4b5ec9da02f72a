using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical;

/// <summary>Everything that was computed about a wiring.</summary>
public sealed record ElectricalResults
{
    /// <summary>An answer for every state.</summary>
    public required ImmutableArray<StateResult> States { get; init; }

    /// <summary>An answer for every conductor, by its index.</summary>
    public required ImmutableArray<ConductorResult> Conductors { get; init; }

    /// <summary>A short to the body at the ends of every conductor that a source can feed.</summary>
    public required ImmutableArray<FaultResult> Faults { get; init; }

    /// <summary>The load on every amplifier channel, head unit channel and bridged pair that has one.</summary>
    public required ImmutableArray<ChannelResult> Channels { get; init; }

    /// <summary>Signal levels at every input.</summary>
    public required ImmutableArray<SignalResult> Signals { get; init; }

    /// <summary>How every device that sleeps is woken.</summary>
    public required ImmutableArray<TurnOnResult> Wakes { get; init; }

    public required EnergyResult Energy { get; init; }

    public StateResult State(SystemState state) => States.First(s => s.State == state);
}

/// <summary>The operating point in one state.</summary>
/// <param name="State">The state.</param>
/// <param name="IsSolved">False if there is no operating point: some load cannot be supplied. Then volts and amps are those at the last
/// power that could be.</param>
/// <param name="Volts">Volts against the body, by terminal index; null for a terminal that floats.</param>
/// <param name="Amps">Current from <c>From</c> to <c>To</c>, by conductor index.</param>
/// <param name="LinkAmps">Current from <c>A</c> to <c>B</c>, by link index.</param>
/// <param name="Resistances">Resistance at the temperature in this state, by conductor index; null for what takes no part in the
/// supply.</param>
/// <param name="Temperatures">Temperature in this state, by conductor index.</param>
/// <param name="Loads">An answer for every powered device.</param>
/// <param name="Sources">Current given by every source; negative for a battery that is charged.</param>
/// <param name="Starved">If it is not solved: which loads cannot be supplied, and what limits them.</param>
public sealed record StateResult(
    SystemState State, bool IsSolved, ImmutableArray<Volts?> Volts, ImmutableArray<Amps> Amps, ImmutableArray<Amps> LinkAmps,
    ImmutableArray<Ohms?> Resistances, ImmutableArray<Celsius> Temperatures, ImmutableArray<LoadResult> Loads,
    ImmutableArray<SourceResult> Sources, ImmutableArray<UnsuppliedLoad> Starved);

/// <summary>A load at its operating point.</summary>
/// <param name="Path">The load and its way there and back, from the source that gives most of its current in this state.</param>
/// <param name="Between">Volts between its terminals.</param>
/// <param name="Amps">What it takes.</param>
/// <param name="Watts">What it takes.</param>
/// <param name="SupplyDrop">Volts lost between the source's positive terminal and the device.</param>
/// <param name="ReturnDrop">Volts lost between the device and the source's negative terminal.</param>
/// <param name="Drop">Both, as a share of the volts at the source's terminals.</param>
public sealed record LoadResult(LoadPath Path, Volts Between, Amps Amps, Watts Watts, Volts SupplyDrop, Volts ReturnDrop, Share Drop);

/// <summary>A source at its operating point.</summary>
/// <param name="Id">Battery, alternator or other source; <c>(alternator)</c> for the vehicle's own that the spec does not wire.</param>
/// <param name="Amps">What it gives; negative if it is charged.</param>
/// <param name="Volts">Volts between its terminals.</param>
/// <param name="AtItsLimit">It gives all it can.</param>
public sealed record SourceResult(string Id, Amps Amps, Volts Volts, bool AtItsLimit);

/// <summary>A load that cannot be supplied.</summary>
/// <param name="Gear">The device.</param>
/// <param name="Wanted">What it wants.</param>
/// <param name="Most">The most that could be brought to it, all loads reduced alike.</param>
/// <param name="LimitingRun">The run with the highest loss on its way.</param>
public sealed record UnsuppliedLoad(Gear Gear, Watts Wanted, Watts Most, string? LimitingRun);

/// <summary>What is known of a conductor by itself.</summary>
/// <param name="Conductor">The conductor.</param>
/// <param name="Resistance20">Resistance of the wire at 20 C, without its terminations.</param>
/// <param name="Resistance">Resistance at working temperature at full output, terminations included.</param>
/// <param name="Temperature">Working temperature at full output.</param>
/// <param name="Ampacity">Allowable current after correction; null for sizes outside the table.</param>
/// <param name="TableAmpacity">As the table has it, before correction.</param>
/// <param name="Correction">Product of the factors applied.</param>
/// <param name="AmpacityBasis">Where the ampacity comes from, in words.</param>
public sealed record ConductorResult(
    Conductor Conductor, Ohms Resistance20, Ohms Resistance, Celsius Temperature, Amps? Ampacity, Amps? TableAmpacity, Share Correction,
    string AmpacityBasis);

/// <summary>A dead short to the body on a conductor that a source can feed.</summary>
/// <param name="Conductor">The conductor.</param>
/// <param name="Near">Prospective current of a short at the end nearest to the source.</param>
/// <param name="Far">Prospective current of a short at the far end.</param>
/// <param name="FarVolts">Volts at the far end before the short, all loads off.</param>
/// <param name="Fed">The way from the source on which the conductor was looked at.</param>
/// <param name="Device">The fuse or breaker that must open; null if there is none.</param>
/// <param name="DeviceAmpsAtFar">Current through that device for a short at the far end.</param>
/// <param name="DeviceAmpsAtNear">Current through that device for a short at its own far terminal: what it must be able to break.</param>
/// <param name="OpensWithin">Longest time within which it must open at the far end; null if no limit is known or it need not open.</param>
/// <param name="Breaking">What the device can break; null if unknown.</param>
/// <param name="LetThrough">I²t that passes until then, in A²s; null if unknown.</param>
/// <param name="Withstand">k²S² of the conductor, in A²s.</param>
/// <param name="UpstreamOpensFirst">Another device nearer to the source may open first or together; null if none does.</param>
public sealed record FaultResult(
    Conductor Conductor, Amps Near, Amps Far, Volts FarVolts, ProtectedConductor Fed, InternalConnection? Device, Amps DeviceAmpsAtFar,
    Amps DeviceAmpsAtNear, Seconds? OpensWithin, Amps? Breaking, double? LetThrough,
    double Withstand, InternalConnection? UpstreamOpensFirst);

/// <summary>What is wrong with a channel's load, if anything.</summary>
public enum LoadFault
{
    None,

    /// <summary>Less than 0.2 ohm.</summary>
    Shorted,

    /// <summary>Joined to another output that is not its declared bridge.</summary>
    TiedToOutput,

    /// <summary>One of its sides is on the body.</summary>
    Grounded,

    /// <summary>Nothing is connected.</summary>
    Open,
}

/// <summary>The load on one channel, or on a bridged pair.</summary>
/// <param name="Gear">The amplifier or head unit.</param>
/// <param name="Channel">The channel's name: <c>sub</c>, <c>front.left</c>; of a bridge, the half that is declared to bridge.</param>
/// <param name="BridgedWith">The other half; null if it is not bridged.</param>
/// <param name="Fault">What is wrong with the load as a whole.</param>
/// <param name="Nominal">Load of the coils alone, wires as if of no resistance; null if open.</param>
/// <param name="Loaded">Load with the wires; null if open.</param>
/// <param name="PerHalf">What each half of a bridge sees; the same as nominal otherwise.</param>
/// <param name="Minimum">Lowest load that is allowed; null if unknown.</param>
/// <param name="Power">What the channel gives into that load; null if no power is stated.</param>
/// <param name="Volts">Volts at the output then, rms.</param>
/// <param name="TargetVolts">Volts at the output to set the gain to: the smaller of what the channel gives and the speakers take; null if
/// unknown.</param>
/// <param name="WireLoss">Level lost in the wires, as a positive number.</param>
/// <param name="Coils">Every coil on it.</param>
public sealed record ChannelResult(
    Gear Gear, string Channel, string? BridgedWith, LoadFault Fault, Ohms? Nominal, Ohms? Loaded, Ohms? PerHalf, Ohms? Minimum,
    Watts? Power, Volts? Volts,
    Volts? TargetVolts, Decibels WireLoss, ImmutableArray<CoilResult> Coils)
{
    public string Id => $"{Gear.Id}.{Channel}";

    /// <summary>What the device says of that output.</summary>
    public SignalOutput Output => Gear.SignalOutputs.First(o => o.DrivesSpeakers && o.Terminal.Name == Channel);

    /// <summary>What an ohm meter shows at the output; null where that is not known.</summary>
    public Ohms? Meter { get; init; }
}

/// <summary>One coil on a channel.</summary>
/// <param name="Speaker">Its driver.</param>
/// <param name="Coil">Its number, from 1.</param>
/// <param name="Power">Power in it when the channel gives its all; null if no power is stated.</param>
/// <param name="ShareOfPower">Its share of the power in all coils of the channel.</param>
/// <param name="IsReversed">It moves against the channel's signal.</param>
/// <param name="IsOpen">No current can flow in it.</param>
/// <param name="Handles">Its share of what the driver takes; null if unknown.</param>
public sealed record CoilResult(Speaker Speaker, int Coil, Watts? Power, Share ShareOfPower, bool IsReversed, bool IsOpen, Watts? Handles);

/// <summary>The signal at one input.</summary>
/// <param name="Gear">The device with the input.</param>
/// <param name="Input">The input's name: <c>in.left</c>.</param>
/// <param name="Chain">Devices from the source to here, source first; empty if nothing feeds it.</param>
/// <param name="Level">As it arrives; null if nothing does.</param>
/// <param name="Maximum">Highest voltage that arrives; null if unknown.</param>
/// <param name="Accepts">What the input takes at that level; null if it is not stated or it takes no such level.</param>
/// <param name="TakesThatLevel">Whether the input takes signals of that level at all.</param>
/// <param name="LevelChanges">Adapters in series.</param>
/// <param name="Lowest">Lowest frequency that the source carries, if known.</param>
/// <param name="Loops">The chain comes back to itself.</param>
/// <param name="FedBy">The output that feeds it: <c>radio.front.left</c>; null if nothing does.</param>
public sealed record SignalResult(
    Gear Gear, string Input, ImmutableArray<Gear> Chain, SignalLevel? Level, Volts? Maximum, Range<Volts>? Accepts, bool TakesThatLevel,
    int LevelChanges, Hertz? Lowest,
    bool Loops, string? FedBy);

/// <summary>How a device is woken.</summary>
/// <param name="Gear">The device.</param>
/// <param name="By">What wakes it; null if nothing wakes it.</param>
/// <param name="Source">The device and terminal that wakes it, if any.</param>
/// <param name="Mode">Its wake setting, or the first thing it can wake on.</param>
/// <param name="ModeMatches">Whether the setting is what is wired.</param>
/// <param name="InputCarriesIt">For dc offset and signal: whether its input carries that.</param>
/// <param name="ControlSources">Every source of its control wire.</param>
/// <param name="HasControlWire">A wire lands on its remote terminal.</param>
/// <param name="LiveWithIgnitionOff">It stays awake with the ignition off.</param>
public sealed record TurnOnResult(
    Gear Gear, WakeMode? By, string? Source, WakeMode Mode, bool ModeMatches, bool InputCarriesIt, ImmutableArray<Terminal> ControlSources,
    bool HasControlWire,
    bool LiveWithIgnitionOff);

/// <summary>Alternator, reserve and standby.</summary>
/// <param name="AlternatorAtSpeed">What the alternator and other sources give at speed; null if unknown.</param>
/// <param name="AlternatorAtIdle">The same, engine idling.</param>
/// <param name="BaseLoad">What the vehicle itself takes.</param>
/// <param name="AverageDemand">What the gear takes, playing music.</param>
/// <param name="PeakDemand">What the gear takes at full output.</param>
/// <param name="StandbyCurrent">What everything takes asleep, the vehicle itself included; a device whose standby is not stated counts as
/// none.</param>
/// <param name="UsableCharge">Charge that may be taken from the batteries.</param>
/// <param name="EngineOff">The batteries that give up first, playing music with the engine off; null if none is drawn on.</param>
/// <param name="Standing">The batteries that are first too flat to start; null if none is drawn on.</param>
/// <param name="ControlLoads">Summed control current at each control source.</param>
public sealed record EnergyResult(
    Amps? AlternatorAtSpeed,
    Amps? AlternatorAtIdle,
    Amps BaseLoad,
    Amps AverageDemand,
    Amps PeakDemand,
    Amps StandbyCurrent,
    AmpHours UsableCharge,
    Discharge? EngineOff,
    Discharge? Standing, ImmutableArray<ControlLoad> ControlLoads)
{
    /// <summary>How long music can play with the engine off; null if nothing ends it.</summary>
    public Seconds? Reserve => EngineOff?.Lasts;

    /// <summary>How long until a battery is too flat to start; null if nothing ends it.</summary>
    public Seconds? StandbyTime => Standing?.Lasts;
}

/// <summary>Batteries that are joined, and what they supply.</summary>
/// <param name="Batteries">The batteries.</param>
/// <param name="Usable">Charge that may be taken from them.</param>
/// <param name="Drawn">What is drawn on average, by device; what charges counts as less.</param>
public sealed record Discharge(ImmutableArray<SourceTerminals> Batteries, AmpHours Usable, ImmutableArray<(string Of, Amps Amps)> Drawn)
{
    public Amps Current => new(Drawn.Sum(d => d.Amps.Value));

    /// <summary>Whether a battery is among them: the first of a spec starts the engine.</summary>
    public bool Includes(SourceTerminals? battery) => battery is not null && Batteries.Any(b => b.Plus.Index == battery.Plus.Index);

    public Seconds Lasts => new(Usable.Value / Current.Value * 3600);
}

/// <summary>The control current that a source supplies.</summary>
/// <param name="Source">The source's terminal.</param>
/// <param name="Takers">What is wired to it, and what each takes.</param>
/// <param name="Limit">What it can supply.</param>
/// <param name="LimitIsAssumed">Nobody wrote the limit.</param>
public sealed record ControlLoad(Terminal Source, ImmutableArray<(Gear Gear, Amps Amps)> Takers, Amps Limit, bool LimitIsAssumed)
{
    /// <summary>Sum of what is wired to it.</summary>
    public Amps Amps => new(Takers.Sum(t => t.Amps.Value));
}
