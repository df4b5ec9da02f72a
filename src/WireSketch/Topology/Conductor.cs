using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Topology;

/// <summary>One physical conductor between two terminals.</summary>
public sealed class Conductor
{
    /// <summary>Its place in <see cref="Wiring.Conductors"/>.</summary>
    public required int Index { get; init; }

    /// <summary>
    /// Its run's id; <c>P1-1</c> and <c>P1-2</c> before and after an inline device; <c>S1+</c> and <c>S1-</c> in a cable; jumpers of a
    /// hookup <c>S1.link1</c>.
    /// </summary>
    public required string Id { get; init; }

    public required string RunId { get; init; }

    /// <summary>What it carries.</summary>
    public required RunKind Kind { get; init; }

    public required Terminal From { get; init; }

    public required Terminal To { get; init; }

    /// <summary>What it is made of.</summary>
    public required WireProperties Wire { get; init; }

    /// <summary>As cut, without slack; zero for a jumper inside a terminal. Where nobody knows, what is taken to compute with.</summary>
    public required Meters Length { get; init; }

    /// <summary>The hottest zone it lies in; null if neither end has a zone.</summary>
    public string? ZoneId { get; init; }

    /// <summary>It is the shield of a signal cable.</summary>
    public bool IsShield { get; init; }

    /// <summary>It links coils or drivers of a hookup.</summary>
    public bool IsJumper { get; init; }

    /// <summary>The other end.</summary>
    public Terminal Other(Terminal end) => end.Index == From.Index ? To : From;

    /// <summary>The same conductor, landed elsewhere or found to carry something else.</summary>
    internal Conductor Changed(Terminal to, RunKind kind) => new()
    {
        Index = Index,
        Id = Id,
        RunId = RunId,
        Kind = kind,
        From = From,
        To = to,
        Wire = Wire,
        Length = Length,
        ZoneId = ZoneId,
        IsShield = IsShield,
        IsJumper = IsJumper,
    };

    public override string ToString() => Id;
}

/// <summary>A way through a device.</summary>
/// <param name="index">Its place among all.</param>
/// <param name="id">Name to show.</param>
/// <param name="gear">Its device.</param>
/// <param name="kind">How it joins.</param>
/// <param name="a">One side.</param>
/// <param name="b">The other side.</param>
/// <param name="rating">Rated current.</param>
/// <param name="style">Construction of a fuse.</param>
/// <param name="breaking">Breaking capacity.</param>
/// <param name="resistance">Its resistance.</param>
/// <param name="drop">Volts lost across it.</param>
/// <param name="closedIn">States in which it is closed.</param>
/// <param name="at">Where it is written.</param>
public sealed class InternalConnection(
    int index,
    string id,
    Gear? gear,
    ConnectionKind kind,
    Terminal a,
    Terminal b,
    Amps? rating,
    FuseStyle? style,
    Amps? breaking,
    Ohms? resistance,
    Volts? drop,
    ImmutableSortedSet<SystemState> closedIn, Text.SourceSpan? at)
{
    /// <summary>Its place in <see cref="Wiring.Links"/>.</summary>
    public int Index => index;

    /// <summary>Name to show: <c>P1.fuse</c>, <c>fuses.2</c>, <c>isolator</c>.</summary>
    public string Id => id;

    /// <summary>Its device; null for the vehicle's body.</summary>
    public Gear? Gear => gear;

    public ConnectionKind Kind => kind;

    /// <summary>One side; the source's side of a diode.</summary>
    public Terminal A => a;

    public Terminal B => b;

    /// <summary>Rated current of a fuse, breaker, switch or contact; null if unknown.</summary>
    public Amps? Rating => rating;

    /// <summary>Construction of a fuse as written; null if not given.</summary>
    public FuseStyle? Style => style;

    /// <summary>Highest current it can break, if written.</summary>
    public Amps? Breaking => breaking;

    /// <summary>Its resistance, if that is known without tables.</summary>
    public Ohms? Resistance => resistance;

    /// <summary>Volts lost across it, for a diode.</summary>
    public Volts? Drop => drop;

    /// <summary>States in which it is closed.</summary>
    public ImmutableSortedSet<SystemState> ClosedIn => closedIn;

    /// <summary>Where it is written.</summary>
    public Text.SourceSpan? At => at;

    /// <summary>What moves it, where it is the contact of a relay.</summary>
    public ContactCoil? Coil { get; init; }

    /// <summary>What the device says of it; null where it lies across terminals of another.</summary>
    public TerminalJoin? Join { get; init; }

    public bool Protects => Kind is ConnectionKind.Fuse or ConnectionKind.Breaker;

    public Terminal Other(Terminal end) => end.Index == A.Index ? B : A;

    public override string ToString() => Id;
}
