using System.Collections.Immutable;
using WireSketch.Language;

namespace WireSketch.Topology;

/// <summary>
/// A step of a walk: by a conductor, by a way through a device, or, where it has neither, by metal that terminals of a device share.
/// </summary>
/// <param name="From">Where it leaves.</param>
/// <param name="To">Where it arrives.</param>
/// <param name="Conductor">The conductor, if it is one.</param>
/// <param name="Link">The way through a device, if it is one.</param>
internal readonly record struct TerminalStep(Terminal From, Terminal To, Conductor? Conductor, InternalConnection? Link);

/// <summary>Whether a walk that stands at a terminal may go on through a connection inside a device.</summary>
internal delegate bool Passes(InternalConnection connection, Terminal from);

/// <summary>The graph of terminals: what lands on each, and the one walk over it.</summary>
/// <param name="conductorsAt">Conductors on a terminal.</param>
/// <param name="connectionsAt">Internal connections of a terminal.</param>
internal sealed class TerminalGraph(
    Func<Terminal, IEnumerable<Conductor>> conductorsAt,
    Func<Terminal, IEnumerable<InternalConnection>> connectionsAt)
{
    /// <summary>The graph of a few conductors and connections alone.</summary>
    public static TerminalGraph Of(IEnumerable<Conductor> conductors, IEnumerable<InternalConnection> connections)
    {
        var wires = conductors.SelectMany(c => new[] { (At: c.From.Index, Item: c), (At: c.To.Index, Item: c) })
            .ToLookup(x => x.At, x => x.Item);
        var ways = connections.SelectMany(c => new[] { (At: c.A.Index, Item: c), (At: c.B.Index, Item: c) })
            .ToLookup(x => x.At, x => x.Item);
        return new(t => wires[t.Index], t => ways[t.Index]);
    }

    /// <summary>A walk from one terminal, over every conductor and through every connection until it is told otherwise.</summary>
    public TerminalWalk From(Terminal start) => new(start, conductorsAt, connectionsAt);
}

/// <summary>A walk over terminals, breadth first: what it follows, and where it ends.</summary>
internal sealed class TerminalWalk(
    Terminal start, Func<Terminal, IEnumerable<Conductor>> conductorsAt, Func<Terminal, IEnumerable<InternalConnection>> connectionsAt)
{
    private Func<Conductor, bool> follows = Follow.All;
    private Passes passes = Pass.All;
    private Func<Terminal, bool> ends = _ => false;
    private Func<Terminal, IEnumerable<Terminal>> shares = _ => [];

    /// <summary>Follows only some conductors, and passes only some connections.</summary>
    public TerminalWalk Over(Func<Conductor, bool> conductors, Passes connections)
    {
        (follows, passes) = (conductors, connections);
        return this;
    }

    /// <summary>Does not go on beyond some terminals; they are reached all the same.</summary>
    public TerminalWalk EndingAt(Func<Terminal, bool> terminals)
    {
        ends = terminals;
        return this;
    }

    /// <summary>Goes on to terminals that share metal with one inside its device.</summary>
    public TerminalWalk Sharing(Func<Terminal, IEnumerable<Terminal>> metal)
    {
        shares = metal;
        return this;
    }

    /// <summary>Every terminal that is reached, once, nearest first: the start itself, then one step for each other.</summary>
    public IEnumerable<TerminalStep> Steps()
    {
        // A walk goes a short way: tables of all terminals would cost more than the walk, once for every load.
        var seen = new HashSet<int> { start.Index };
        var queue = new Queue<Terminal>([start]);
        yield return new(start, start, null, null);
        while (queue.TryDequeue(out var here))
        {
            if (ends(here))
            {
                continue;
            }

            foreach (var step in From(here))
            {
                if (seen.Add(step.To.Index))
                {
                    queue.Enqueue(step.To);
                    yield return step;
                }
            }
        }
    }

    /// <summary>Every terminal that is reached, nearest first.</summary>
    public IEnumerable<Terminal> Terminals() => Steps().Select(s => s.To);

    /// <summary>Indexes of the terminals that are reached.</summary>
    public HashSet<int> Reached() => [.. Terminals().Select(t => t.Index)];

    /// <summary>The fewest steps to a terminal that fits and is not the start; null if none is reached.</summary>
    public (Terminal End, ImmutableArray<TerminalStep> Steps)? PathTo(Func<Terminal, bool> fits)
    {
        var came = new Dictionary<int, TerminalStep>();
        foreach (var step in Steps())
        {
            came[step.To.Index] = step;
            if (step.To.Index != start.Index && fits(step.To))
            {
                var steps = new List<TerminalStep>();
                for (var at = step.To; at.Index != start.Index; at = came[at.Index].From)
                {
                    steps.Add(came[at.Index]);
                }

                steps.Reverse();
                return (step.To, [.. steps]);
            }
        }

        return null;
    }

    private IEnumerable<TerminalStep> From(Terminal here)
    {
        foreach (var c in conductorsAt(here))
        {
            if (follows(c))
            {
                yield return new(here, c.Other(here), c, null);
            }
        }

        foreach (var l in connectionsAt(here))
        {
            if (passes(l, here))
            {
                yield return new(here, l.Other(here), null, l);
            }
        }

        foreach (var t in shares(here))
        {
            yield return new(here, t, null, null);
        }
    }
}

/// <summary>Which conductors a walk follows.</summary>
internal static class Follow
{
    public static bool All(Conductor c) => true;

    public static bool None(Conductor c) => false;

    /// <summary>All but the shields of signal cables.</summary>
    public static bool WithoutShields(Conductor c) => !c.IsShield;
}

/// <summary>Which connections inside devices a walk passes.</summary>
internal static class Pass
{
    public static bool All(InternalConnection c, Terminal from) => true;

    public static bool None(InternalConnection c, Terminal from) => false;

    /// <summary>All but the vehicle's own metal: neither the chassis nor a factory lead.</summary>
    public static bool WithoutVehicle(InternalConnection c, Terminal from) =>
        c.Kind is not (ConnectionKind.Chassis or ConnectionKind.FactoryLead);

    /// <summary>All but the chassis.</summary>
    public static bool WithoutChassis(InternalConnection c, Terminal from) => c.Kind != ConnectionKind.Chassis;

    /// <summary>A diode from main to second only; all else both ways.</summary>
    public static bool AlongDiodes(InternalConnection c, Terminal from) => c.Kind != ConnectionKind.Diode || c.A.Index == from.Index;

    /// <summary>Against the current: a diode from second to main only.</summary>
    public static bool AgainstDiodes(InternalConnection c, Terminal from) => c.Kind != ConnectionKind.Diode || c.B.Index == from.Index;

    /// <summary>What a source feeds: not over the vehicle's own metal, and through a diode in its direction.</summary>
    public static bool Feeding(InternalConnection c, Terminal from) => WithoutVehicle(c, from) && AlongDiodes(c, from);

    /// <summary>Metal, closed contacts and diodes in their direction: everything but fuses, breakers and the vehicle's own metal.</summary>
    public static bool Unprotected(InternalConnection c, Terminal from) =>
        c.Kind is ConnectionKind.Joint or ConnectionKind.Switch || (c.Kind == ConnectionKind.Diode && c.A.Index == from.Index);

    /// <summary>Those closed in a state, by its word, other than the vehicle's own metal.</summary>
    public static Passes ClosedIn(SystemState state) => (c, from) => WithoutVehicle(c, from) && c.ClosedIn.Contains(state);

    /// <summary>All but the ways through one device.</summary>
    public static Passes Around(Gear device) => (c, from) => !ReferenceEquals(c.Gear, device) && WithoutChassis(c, from);
}
