using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>A pair of terminals by which gear takes current from the supply.</summary>
public sealed record PowerInput
{
    public required TerminalShape Plus { get; init; }

    /// <summary>The return of that current.</summary>
    public required TerminalShape Minus { get; init; }

    /// <summary>Powered only where a wire lands on its plus: without one it takes nothing, and nothing is missing.</summary>
    public required bool IsOptional { get; init; }

    /// <summary>What it takes.</summary>
    public required LoadBehavior Takes { get; init; }

    /// <summary>Held to the tighter limit of voltage drop.</summary>
    public required bool IsCritical { get; init; }

    /// <summary>The device's own fuses, in all.</summary>
    public required Written<Amps>? OwnFuse { get; init; }

    /// <summary>The cable that its terminals take.</summary>
    public required Written<Range<WireSize>>? Fits { get; init; }
}

/// <summary>
/// What gear takes from the supply, as the spec states it: a closed choice that the electrical stage evaluates in every state.
/// </summary>
public abstract record LoadBehavior
{
    /// <summary>Draw while asleep, as written; null if nobody says, or if it never sleeps.</summary>
    public Written<Amps>? Standby { get; init; }

    /// <summary>It sleeps by a circuit of its own, so it takes something then, and the spec should say what.</summary>
    public abstract bool SleepsByItself { get; }
}

/// <summary>An amplifier: its output over its efficiency, and never less than its idle draw.</summary>
public sealed record OutputDraw : LoadBehavior
{
    public override bool SleepsByItself => true;

    public required Written<Amps>? Idle { get; init; }

    /// <summary>Draw at full output, if its maker states it.</summary>
    public required Written<Amps>? Current { get; init; }

    /// <summary>Its own fuses, which bound what it takes where nothing else says.</summary>
    public required Written<Amps>? Fuse { get; init; }

    public required Written<Share>? Efficiency { get; init; }

    /// <summary>Class D, which loses less than others.</summary>
    public required bool IsClassD { get; init; }

    /// <summary>Some channel states what power it gives.</summary>
    public required bool StatesPower { get; init; }
}

/// <summary>A head unit or processor: a constant power while awake.</summary>
public sealed record ElectronicsDraw : LoadBehavior
{
    public override bool SleepsByItself => true;

    public required Written<Amps>? Current { get; init; }

    /// <summary>What is taken for its current where nobody says (common practice, no published source).</summary>
    public required Amps Usual { get; init; }
}

/// <summary>A small circuit: a constant current while awake, nothing asleep.</summary>
public sealed record SmallCircuitDraw : LoadBehavior
{
    public override bool SleepsByItself => false;

    public required Written<Amps>? Current { get; init; }

    /// <summary>What is taken for its current where nobody says (common practice, no published source).</summary>
    public required Amps Usual { get; init; }
}

/// <summary>A relay's coil: a resistance.</summary>
public sealed record CoilDraw : LoadBehavior
{
    public override bool SleepsByItself => false;

    /// <summary>As written, a current or a resistance.</summary>
    public required Written<string>? Coil { get; init; }

    public required Written<Amps>? Current { get; init; }

    public required Written<Ohms>? Resistance { get; init; }

    /// <summary>A diode lies across it, so its plus must be positive.</summary>
    public required bool HasDiode { get; init; }
}

/// <summary>A lamp, motor, pump or any other load: constant power, current or resistance.</summary>
public sealed record ApplianceDraw : LoadBehavior
{
    public override bool SleepsByItself => false;

    public required Written<Watts>? Power { get; init; }

    public required Written<Amps>? Current { get; init; }

    public required Written<Ohms>? Resistance { get; init; }

    /// <summary>The voltage at which it takes that.</summary>
    public required Written<Volts>? Rated { get; init; }

    /// <summary>What of its draw stays the same as the voltage changes: as written, else as its kind behaves.</summary>
    public required DrawLaw Law { get; init; }

    /// <summary>Where that is written; null if its kind decides.</summary>
    public required Written<DrawLaw>? WrittenLaw { get; init; }

    /// <summary>Current for a moment when it starts.</summary>
    public required Written<Amps>? Surge { get; init; }

    /// <summary>The voltage below which it stops.</summary>
    public required Written<Volts>? Lowest { get; init; }

    /// <summary>Share of the time in which it runs.</summary>
    public required Written<Share>? Duty { get; init; }

    /// <summary>Time in a day in which it runs.</summary>
    public required Written<Seconds>? Hours { get; init; }

    /// <summary>Runs on while everything else is asleep.</summary>
    public required bool AlwaysLive { get; init; }

    /// <summary>Makes alternating current.</summary>
    public required bool IsInverter { get; init; }
}
