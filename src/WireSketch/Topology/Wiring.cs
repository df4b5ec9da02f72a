using System.Collections.Frozen;
using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Topology;

/// <summary>
/// The system as it is wired: every terminal that a conductor can land on, every conductor, what joins terminals inside
/// devices, and what can be read off the graph of them. Arrays are indexed by <see cref="Terminal.Index"/>,
/// <see cref="Conductor.Index"/> and <see cref="InternalConnection.Index"/>.
/// </summary>
public sealed record Wiring
{
    public required Spec Spec { get; init; }

    /// <summary>Sizes that were chosen where the spec says <c>auto</c>.</summary>
    public required SizeChoices Choices { get; init; }

    /// <summary>The spec's gear in its order, then the holders of inline fuses and breakers, named <c>P1.fuse</c> or <c>P1.breaker</c>.</summary>
    public required ImmutableArray<Gear> Gear { get; init; }

    /// <summary>Every single-conductor terminal of every device. The first is the vehicle's body, which is the reference for all volts.</summary>
    public required ImmutableArray<Terminal> Terminals { get; init; }

    public required ImmutableArray<WiredRun> Runs { get; init; }

    public required ImmutableArray<Conductor> Conductors { get; init; }

    public required ImmutableArray<InternalConnection> Links { get; init; }

    public required ImmutableArray<Net> Nets { get; init; }

    /// <summary>For each supply source, what it can feed and through which protection.</summary>
    public required ImmutableArray<SupplyTree> Feeds { get; init; }

    /// <summary>For each powered device, how current comes and how it goes back.</summary>
    public required ImmutableArray<LoadPath> Loads { get; init; }

    public required FrozenDictionary<string, Terminal> TerminalsById { get; init; }

    /// <summary>The terminals of each device, by its id.</summary>
    public required FrozenDictionary<string, ImmutableArray<Terminal>> TerminalsByGear { get; init; }

    public required FrozenDictionary<string, Gear> GearById { get; init; }

    public required FrozenDictionary<string, WiredRun> RunsById { get; init; }

    /// <summary>Net of each terminal, by terminal index.</summary>
    public required ImmutableArray<Net> NetOf { get; init; }

    /// <summary>Conductors that land on each terminal, by terminal index.</summary>
    public required ImmutableArray<ImmutableArray<Conductor>> ConductorsAt { get; init; }

    /// <summary>Internal links of each terminal, by terminal index.</summary>
    public required ImmutableArray<ImmutableArray<InternalConnection>> LinksAt { get; init; }

    /// <summary>The reference node: the vehicle's body.</summary>
    public Terminal Body => Terminals[0];

    /// <summary>The starter battery: the first of the spec; null if it has none. The vehicle's own alternator and circuits hang on it.</summary>
    public Battery? Starter => Gear.OfType<Battery>().FirstOrDefault();

    /// <summary>The walk over its terminals.</summary>
    internal TerminalGraph Graph => new(t => ConductorsAt[t.Index], t => LinksAt[t.Index]);

    /// <summary>Where the current of a source goes home to: its minus; the body for a circuit of the vehicle.</summary>
    public Terminal ReturnOf(Terminal source) => source.Gear is { } gear && TerminalRoles.IsSource(gear) ? TerminalOf(gear, "-")! : Body;

    /// <summary>A device's terminal by its own name, or null if the device has none of that name.</summary>
    public Terminal? TerminalOf(Gear gear, string name) => TerminalsById.GetValueOrDefault(name.Length == 0 ? gear.Id : $"{gear.Id}.{name}");

    /// <summary>All terminals of a device.</summary>
    public ImmutableArray<Terminal> TerminalsOf(Gear gear) => TerminalsByGear.GetValueOrDefault(gear.Id, []);

    /// <summary>Whether any conductor lands on a terminal.</summary>
    public bool IsWired(Terminal terminal) => !ConductorsAt[terminal.Index].IsEmpty;

    /// <summary>Whether any conductor lands on a device.</summary>
    public bool IsWired(Gear gear) => TerminalsOf(gear).Any(IsWired);
}

/// <summary>A point that one conductor can land on.</summary>
/// <param name="Index">Its place in <see cref="Wiring.Terminals"/>.</param>
/// <param name="Id">Full name: <c>amp.+</c>, <c>amp.sub.-</c>, <c>seat-bolt</c>; <c>(body)</c> for the vehicle's body.</param>
/// <param name="Gear">Its device; null for the body.</param>
/// <param name="Shape">The terminal or pair of the device that it belongs to.</param>
/// <param name="Side">'+' or '-' for a side of a pair, else a space.</param>
public sealed record Terminal(int Index, string Id, Gear? Gear, TerminalShape Shape, char Side)
{
    public TerminalRole Role => Shape.Role;

    public bool Equals(Terminal? other) => other is not null && other.Index == Index && other.Id == Id;

    public override int GetHashCode() => Index;

    public override string ToString() => Id;
}

/// <summary>What a run carries.</summary>
public enum RunKind
{
    Supply,
    Ground,
    Line,
    Speaker,
    Control,
}

/// <summary>A terminal, pair or group at an end of a run, as it is named and drawn.</summary>
/// <param name="Id">Full name: <c>amp.sub</c>, <c>radio.front</c>, <c>amp.+</c>.</param>
/// <param name="Gear">Its device.</param>
/// <param name="Shape">What was named; for a single side of a pair, the pair.</param>
/// <param name="Nodes">The single terminals it stands for, pairs as + then −, members in order.</param>
/// <param name="At">Where it is written.</param>
public sealed record RunEnd(string Id, Gear Gear, TerminalShape Shape, ImmutableArray<Terminal> Nodes, Text.SourceSpan At)
{
    /// <summary>True if pairs: its nodes alternate + and −.</summary>
    public bool IsPairs => Nodes.Length > 1;
}

/// <summary>A run with its ends found and its conductors made.</summary>
/// <param name="Run">As written.</param>
/// <param name="Kind">What it carries.</param>
/// <param name="From">Its beginning: one end, or the two single terminals of a pair.</param>
/// <param name="To">Its other ends; several for a run to several loads.</param>
/// <param name="Conductors">All its conductors, jumpers of a hookup included.</param>
/// <param name="Holder">The device of its inline fuse or breaker; null if it has none, or if the fuse sits in a block.</param>
/// <param name="Wire">Its wire, with every default filled in.</param>
/// <param name="Length">Length of one conductor, without slack.</param>
/// <param name="Route">The paths that it follows, in order: as written, else the shortest way between its ends where it has no length either.</param>
/// <param name="LengthIsKnown">False if neither a length nor a path gives it; then <paramref name="Length"/> is a stand-in of 3 m.</param>
public sealed record WiredRun(
    Run Run, RunKind Kind, ImmutableArray<RunEnd> From, ImmutableArray<RunEnd> To, ImmutableArray<Conductor> Conductors, ProtectiveDevice? Holder,
    WireProperties Wire, Meters Length, ImmutableArray<RoutedPath> Route, bool LengthIsKnown)
{
    public string Id => Run.Id;

    /// <summary>What guards it where it passes a wall: as written, else what its path passes; null if neither says.</summary>
    public string? Guard => Run.Through?.Value ?? Route.SelectMany(r => r.Path.Passes).Select(p => p.Value).FirstOrDefault(GrommetWords.Say);

    /// <summary>True if current comes and goes in the same cable.</summary>
    public bool IsTwoWire => From.Sum(e => e.Nodes.Length) > 1;

    public bool Equals(WiredRun? other) => other is not null && ReferenceEquals(Run, other.Run);

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);
}

/// <summary>A path that a run follows.</summary>
/// <param name="Path">The path.</param>
/// <param name="At">Where the run says so; its name where the way was found.</param>
public sealed record RoutedPath(VehiclePath Path, Text.SourceSpan At)
{
    public string Id => Path.Id;
}

/// <summary>A run's wire with every default filled in.</summary>
/// <param name="Size">Size of one conductor.</param>
/// <param name="SizeWords">The size as the user wrote it, or as chosen.</param>
/// <param name="Material">Copper or copper-clad aluminum.</param>
/// <param name="Strands">solid, stranded or fine.</param>
/// <param name="Insulation">Temperature that the insulation is rated for.</param>
/// <param name="InsulationIsAssumed">True if nobody wrote it.</param>
/// <param name="Colors">Main color and tracer; empty if unknown.</param>
/// <param name="Cores">Conductors in the cable.</param>
/// <param name="IsLinePair">A shielded two-channel signal cable.</param>
/// <param name="Type">The wire type it is of, if one was named.</param>
/// <param name="IsAuto">The compiler chose the size.</param>
public sealed record WireProperties(
    WireSize Size, string SizeWords, ConductorMaterial Material, string Strands, Celsius Insulation, bool InsulationIsAssumed, ImmutableArray<string> Colors, int Cores,
    bool IsLinePair, WireType? Type, bool IsAuto)
{
    /// <summary>A crimped or screwed connection (common practice, no published source).</summary>
    public static Ohms UsualTermination { get; } = new(0.0002);

    /// <summary>Resistance of each of its connections.</summary>
    public Ohms Termination { get; init; } = UsualTermination;
}

/// <summary>One physical conductor between two terminals.</summary>
/// <param name="Index">Its place in <see cref="Wiring.Conductors"/>.</param>
/// <param name="Id">Its run's id; <c>P1-1</c> and <c>P1-2</c> before and after an inline device; <c>S1+</c> and <c>S1-</c> in a cable; jumpers of a hookup <c>S1.link1</c>.</param>
/// <param name="RunId">Its run.</param>
/// <param name="Kind">What it carries.</param>
/// <param name="From">Where it begins.</param>
/// <param name="To">Where it ends.</param>
/// <param name="Wire">What it is made of.</param>
/// <param name="Length">As cut, without slack; zero for a jumper inside a terminal.</param>
/// <param name="ZoneId">The hottest zone it lies in; null if neither end has a zone.</param>
/// <param name="IsShield">It is the shield of a signal cable.</param>
/// <param name="IsJumper">It links coils or drivers of a hookup.</param>
public sealed record Conductor(
    int Index, string Id, string RunId, RunKind Kind, Terminal From, Terminal To, WireProperties Wire, Meters Length, string? ZoneId, bool IsShield, bool IsJumper)
{
    /// <summary>The other end.</summary>
    public Terminal Other(Terminal end) => end.Index == From.Index ? To : From;

    public bool Equals(Conductor? other) => other is not null && other.Index == Index && other.Id == Id;

    public override int GetHashCode() => Index;

    public override string ToString() => Id;
}

/// <summary>How two terminals of one device are joined inside it.</summary>
public enum ConnectionKind
{
    /// <summary>One piece of metal.</summary>
    Joint,

    Fuse,
    Breaker,

    /// <summary>Current passes both ways while closed.</summary>
    Switch,

    /// <summary>Current passes from main to second only.</summary>
    Diode,

    /// <summary>The body of the vehicle between a chassis point and the rest of it.</summary>
    Chassis,

    /// <summary>A factory lead that no run describes.</summary>
    FactoryLead,
}

/// <summary>A way through a device.</summary>
/// <param name="Index">Its place in <see cref="Wiring.Links"/>.</param>
/// <param name="Id">Name to show: <c>P1.fuse</c>, <c>fuses.2</c>, <c>isolator</c>.</param>
/// <param name="Gear">Its device; null for the vehicle's body.</param>
/// <param name="Kind">How it joins.</param>
/// <param name="A">One side; the source's side of a diode.</param>
/// <param name="B">The other side.</param>
/// <param name="Rating">Rated current of a fuse, breaker, switch or contact; null if unknown.</param>
/// <param name="Style">Construction of a fuse as written; null if not given.</param>
/// <param name="Breaking">Highest current it can break, if written.</param>
/// <param name="Resistance">Its resistance, if that is known without tables.</param>
/// <param name="Drop">Volts lost across it, for a diode.</param>
/// <param name="ClosedIn">States in which it is closed, by their words.</param>
/// <param name="At">Where it is written.</param>
public sealed record InternalConnection(
    int Index, string Id, Gear? Gear, ConnectionKind Kind, Terminal A, Terminal B, Amps? Rating, string? Style, Amps? Breaking, Ohms? Resistance, Volts? Drop,
    ImmutableArray<string> ClosedIn, Text.SourceSpan? At)
{
    public bool Protects => Kind is ConnectionKind.Fuse or ConnectionKind.Breaker;

    public Terminal Other(Terminal end) => end.Index == A.Index ? B : A;

    public bool Equals(InternalConnection? other) => other is not null && other.Index == Index && other.Id == Id;

    public override int GetHashCode() => Index;

    public override string ToString() => Id;
}

/// <summary>Terminals that are one node as far as a meter's beep can tell: joined by conductors and solid metal.</summary>
/// <param name="Id">Id of its first run in the order of the spec; of its first terminal if it has no run.</param>
/// <param name="Terminals">In order of index.</param>
public sealed record Net(string Id, ImmutableArray<Terminal> Terminals)
{
    public bool Equals(Net? other) => other is not null && other.Id == Id;

    public override int GetHashCode() => Id.GetHashCode(StringComparison.Ordinal);
}

/// <summary>A step along a path: a conductor or a way through a device.</summary>
public sealed record PathStep(Conductor? Conductor, InternalConnection? Link, Terminal Enters, Terminal Leaves);

/// <summary>A powered device with its way from a source and back.</summary>
/// <param name="Gear">The device.</param>
/// <param name="Plus">Its supply terminal.</param>
/// <param name="Minus">Its return terminal.</param>
/// <param name="Source">The positive terminal of the source that feeds it by the fewest steps; null if none does.</param>
/// <param name="Supply">Steps from the source to the device.</param>
/// <param name="Return">Steps from the device to the body or to a source's negative; empty if there is no way back.</param>
/// <param name="HasReturn">Whether there is a way back.</param>
/// <param name="IsTakenAsWired">In the vehicle before, and no run says otherwise: supply and return are taken for granted.</param>
/// <param name="ReturnsThroughShield">The only way back runs through the shield of a signal cable; <paramref name="Return"/> shows it.</param>
public sealed record LoadPath(
    Gear Gear, Terminal Plus, Terminal Minus, Terminal? Source, ImmutableArray<PathStep> Supply, ImmutableArray<PathStep> Return, bool HasReturn, bool IsTakenAsWired,
    bool ReturnsThroughShield);

/// <summary>Sizes that were chosen for runs that say <c>auto</c>.</summary>
/// <param name="Wires">Size by run.</param>
/// <param name="Fuses">Rating by run.</param>
/// <param name="Reasons">By run, in words: what decided its size.</param>
public sealed record SizeChoices(
    ImmutableSortedDictionary<string, WireSize> Wires, ImmutableSortedDictionary<string, Amps> Fuses, ImmutableSortedDictionary<string, string> Reasons)
{
    public static SizeChoices None { get; } = new(Empty<WireSize>(), Empty<Amps>(), Empty<string>());

    private static ImmutableSortedDictionary<string, T> Empty<T>() => ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
}
