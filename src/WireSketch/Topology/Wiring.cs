using System.Collections.Frozen;
using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;

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

    /// <summary>
    /// The spec's gear in its order, then the holders of inline fuses and breakers, named <c>P1.fuse</c> or <c>P1.breaker</c>.
    /// </summary>
    public required ImmutableArray<Gear> Gear { get; init; }

    /// <summary>
    /// Every single-conductor terminal of every device. The first is the vehicle's body, which is the reference for all volts.
    /// </summary>
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

    /// <summary>Every source of supply with its terminals, in the order of the spec.</summary>
    public required ImmutableArray<SourceTerminals> Sources { get; init; }

    /// <summary>The battery that starts the engine: the first of the spec; null if there is none.</summary>
    public SourceTerminals? Starter { get; init; }

    /// <summary>Where the current of a source goes home to: its minus; the body for a circuit of the vehicle.</summary>
    public Terminal ReturnOf(Terminal source) => SourceAt(source)?.Minus ?? Body;

    /// <summary>The source whose plus a terminal is; null if the terminal gives no supply.</summary>
    public SourceTerminals? SourceAt(Terminal terminal) => Sources.FirstOrDefault(s => s.Plus.Index == terminal.Index);

    /// <summary>A single terminal that a device declares.</summary>
    public Terminal At(Gear gear, TerminalShape node) => TerminalsById[TerminalTable.Name(gear, node)];

    /// <summary>The + of a pair that a device declares.</summary>
    public Terminal PlusOf(Gear gear, TerminalShape pair) => TerminalsById[TerminalTable.Name(gear, pair) + ".+"];

    /// <summary>The - of a pair that a device declares.</summary>
    public Terminal MinusOf(Gear gear, TerminalShape pair) => TerminalsById[TerminalTable.Name(gear, pair) + ".-"];

    /// <summary>The walk over its terminals.</summary>
    internal TerminalGraph Graph => new(t => ConductorsAt[t.Index], t => LinksAt[t.Index]);

    /// <summary>A device's terminal by its own name, or null if the device has none of that name.</summary>
    public Terminal? TerminalOf(Gear gear, string name) =>
        TerminalsById.GetValueOrDefault(name.Length == 0 ? gear.Id : $"{gear.Id}.{name}");

    /// <summary>All terminals of a device.</summary>
    public ImmutableArray<Terminal> TerminalsOf(Gear gear) => TerminalsByGear.GetValueOrDefault(gear.Id, []);

    /// <summary>Whether any conductor lands on a terminal.</summary>
    public bool IsWired(Terminal terminal) => !ConductorsAt[terminal.Index].IsEmpty;

    /// <summary>Whether any conductor lands on a device.</summary>
    public bool IsWired(Gear gear) => TerminalsOf(gear).Any(IsWired);
}

/// <summary>A source of supply with its terminals.</summary>
/// <param name="Gear">Its device.</param>
/// <param name="Source">What it can give.</param>
/// <param name="Plus">Where it gives.</param>
/// <param name="Minus">Where its current comes home; null for a circuit of the vehicle.</param>
public sealed record SourceTerminals(Gear Gear, SupplySource Source, Terminal Plus, Terminal? Minus)
{
    public string Id => Gear.Id;

    /// <summary>A battery, alternator or charger: a source with poles of its own, and no circuit of the vehicle.</summary>
    public bool HasPoles => Minus is not null;
}

/// <summary>The coil that moves a contact.</summary>
/// <param name="Plus">One end of the coil.</param>
/// <param name="Minus">The other.</param>
/// <param name="ClosesPulledIn">The contact is closed while the coil is pulled in; otherwise while it has fallen off.</param>
public sealed record ContactCoil(Terminal Plus, Terminal Minus, bool ClosesPulledIn);

/// <summary>A point that one conductor can land on.</summary>
/// <param name="index">Its place among all.</param>
/// <param name="id">Full name.</param>
/// <param name="gear">Its device; null for the body.</param>
/// <param name="shape">What it belongs to.</param>
/// <param name="side">Its side of a pair.</param>
public sealed class Terminal(int index, string id, Gear? gear, TerminalShape shape, char side)
{
    /// <summary>Its place in <see cref="Wiring.Terminals"/>.</summary>
    public int Index => index;

    /// <summary>Full name: <c>amp.+</c>, <c>amp.sub.-</c>, <c>seat-bolt</c>; <c>(body)</c> for the vehicle's body.</summary>
    public string Id => id;

    /// <summary>Its device; null for the body.</summary>
    public Gear? Gear => gear;

    /// <summary>The terminal or pair of the device that it belongs to.</summary>
    public TerminalShape Shape => shape;

    /// <summary>'+' or '-' for a side of a pair, else a space.</summary>
    public char Side => side;

    public TerminalRole Role => Shape.Role;

    public override string ToString() => Id;
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
/// <param name="Strands">How fine it is stranded.</param>
/// <param name="Insulation">Temperature that the insulation is rated for.</param>
/// <param name="InsulationIsAssumed">True if nobody wrote it.</param>
/// <param name="Colors">Main color and tracer; empty if unknown.</param>
/// <param name="Cores">Conductors in the cable.</param>
/// <param name="IsLinePair">A shielded two-channel signal cable.</param>
/// <param name="Type">The wire type it is of, if one was named.</param>
/// <param name="IsAuto">The compiler chose the size.</param>
public sealed record WireProperties(
    WireSize Size, string SizeWords, ConductorMaterial Material, Stranding Strands, Celsius Insulation, bool InsulationIsAssumed,
    ImmutableArray<string> Colors, int Cores,
    bool IsLinePair, WireType? Type, bool IsAuto)
{
    /// <summary>Resistance of each of its connections.</summary>
    public Ohms Termination { get; init; } = Assume.Termination.Value;

    /// <summary>Colors of each core in the order of the terminals, where they differ; else empty.</summary>
    public ImmutableArray<ImmutableArray<string>> CoreColors { get; init; } = [];

    /// <summary>Its color as people write it: <c>red</c>, <c>white/blue + white/black</c>; empty if unknown.</summary>
    public string ColorWords =>
        CoreColors.IsEmpty ? string.Join('/', Colors) : string.Join(" + ", CoreColors.Select(c => string.Join('/', c)));
}

/// <summary>Terminals that are one node as far as a meter's beep can tell: joined by conductors and solid metal.</summary>
/// <param name="id">Its name.</param>
/// <param name="terminals">Its terminals.</param>
public sealed class Net(string id, ImmutableArray<Terminal> terminals)
{
    /// <summary>Id of its first run in the order of the spec; of its first terminal if it has no run.</summary>
    public string Id => id;

    /// <summary>In order of index.</summary>
    public ImmutableArray<Terminal> Terminals => terminals;
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
/// <param name="ReturnsThroughShield">The only way back runs through the shield of a signal cable; <paramref name="Return"/> shows
/// it.</param>
public sealed record LoadPath(
    Gear Gear, Terminal Plus, Terminal Minus, Terminal? Source, ImmutableArray<PathStep> Supply, ImmutableArray<PathStep> Return,
    bool HasReturn, bool IsTakenAsWired,
    bool ReturnsThroughShield)
{
    /// <summary>What it takes there.</summary>
    public required PowerInput Input { get; init; }
}

/// <summary>Sizes that were chosen for runs that say <c>auto</c>.</summary>
/// <param name="Wires">Size by run.</param>
/// <param name="Fuses">Rating by run.</param>
/// <param name="Reasons">By run, in words: what decided the size of its wire.</param>
/// <param name="FuseReasons">By run, in words: what decided the rating of its fuse.</param>
public sealed record SizeChoices(
    ImmutableSortedDictionary<string, WireSize> Wires,
    ImmutableSortedDictionary<string, Amps> Fuses,
    ImmutableSortedDictionary<string, string> Reasons,
    ImmutableSortedDictionary<string, string> FuseReasons)
{
    public static SizeChoices None { get; } = new(Empty<WireSize>(), Empty<Amps>(), Empty<string>(), Empty<string>());

    private static ImmutableSortedDictionary<string, T> Empty<T>() => ImmutableSortedDictionary.Create<string, T>(StringComparer.Ordinal);
}
