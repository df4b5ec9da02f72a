using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Language;

/// <summary>How two terminals of one device are joined inside it.</summary>
public enum ConnectionKind
{
    /// <summary>One piece of metal.</summary>
    Joint,

    Fuse,
    Breaker,

    /// <summary>Current passes both ways while closed.</summary>
    Switch,

    /// <summary>Current passes from the first terminal to the second only.</summary>
    Diode,

    /// <summary>The body of the vehicle between a chassis point and the rest of it.</summary>
    Chassis,

    /// <summary>A factory lead that no run describes.</summary>
    FactoryLead,
}

/// <summary>When a join is there.</summary>
public enum JoinCondition
{
    Always,

    /// <summary>As long as no wire lands on its first terminal.</summary>
    FirstIsUnwired,

    /// <summary>At the starter battery, as long as no cable takes its first terminal to a chassis point.</summary>
    StarterWithoutGroundCable,
}

/// <summary>What the second end of a join is.</summary>
public enum JoinEnd
{
    /// <summary>Another terminal of the same device.</summary>
    Own,

    /// <summary>The body of the vehicle.</summary>
    Body,

    /// <summary>The positive terminal of the starter battery; without one there is no join.</summary>
    StarterPositive,
}

/// <summary>A way for current inside gear, or from gear to the body.</summary>
public abstract record InternalJoin;

/// <summary>A way from a terminal to another, to the body or to the starter battery.</summary>
public sealed record TerminalJoin : InternalJoin
{
    /// <summary>What stands behind the device's id in the name of the join: <c>.2</c>, <c>.lead</c>; empty for its main one.</summary>
    public string Suffix { get; init; } = "";

    public required ConnectionKind Kind { get; init; }

    /// <summary>The source's side of a diode.</summary>
    public required TerminalShape First { get; init; }

    /// <summary>The other terminal; null where <see cref="End"/> is not of the device.</summary>
    public required TerminalShape? Second { get; init; }

    public JoinEnd End { get; init; }

    public JoinCondition When { get; init; }

    public required ImmutableSortedSet<SystemState> ClosedIn { get; init; }

    public Written<Amps>? Rating { get; init; }

    public Written<FuseStyle>? Style { get; init; }

    /// <summary>The highest current it can break.</summary>
    public Written<Amps>? Breaking { get; init; }

    /// <summary>How it is closed again once it has opened; breakers only.</summary>
    public Written<BreakerReset>? Reset { get; init; }

    /// <summary>Volts lost across it.</summary>
    public Written<Volts>? Drop { get; init; }

    /// <summary>Its fuse may be written at the run that leaves from <see cref="Second"/>.</summary>
    public bool FuseMayStandAtRun { get; init; }

    /// <summary>The coil that moves it, where one does.</summary>
    public ContactDrive? Drive { get; init; }

    /// <summary>How it joins two batteries, where it is made for that.</summary>
    public BatteryJoin? Batteries { get; init; }
}

/// <summary>
/// Joins two batteries while charging and parts them otherwise: its first terminal belongs to the battery that is charged first, its
/// second to the one that is charged through it.
/// </summary>
/// <param name="PullsInAgainst">The terminal against which it pulls in or senses volts; null if it needs none.</param>
public sealed record BatteryJoin(TerminalShape? PullsInAgainst);

/// <summary>
/// The coil that opens and closes a contact once both its ends are wired; until then the contact goes by the state alone.
/// </summary>
/// <param name="Plus">One end of the coil.</param>
/// <param name="Minus">The other.</param>
/// <param name="ClosesPulledIn">The contact is closed while the coil is pulled in; otherwise while it has fallen off.</param>
public sealed record ContactDrive(TerminalShape Plus, TerminalShape Minus, bool ClosesPulledIn);

/// <summary>The device lies across terminals of another, by their name, instead of by runs.</summary>
/// <param name="Across">The name.</param>
/// <param name="Own">The device's own terminals, in the order in which they meet those of the other.</param>
public sealed record AcrossJoin(Written<string> Across, ImmutableArray<TerminalShape> Own) : InternalJoin;
