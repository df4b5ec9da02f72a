using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;

namespace WireSketch.Topology;

/// <summary>Walks the graph of terminals: what a source can feed, how current comes to a load and how it goes back.</summary>
internal sealed class PathTracer(
    ImmutableArray<Gear> gear, TerminalTable table, ImmutableArray<ImmutableArray<Conductor>> conductorsAt, ImmutableArray<ImmutableArray<InternalConnection>> linksAt)
{
    private readonly int count = table.All.Count;
    private readonly ILookup<string, Terminal> groundsInside = table.All.Where(t => t.Gear is not null && IsGroundInside(t)).ToLookup(t => t.Gear!.Id, StringComparer.Ordinal);

    /// <summary>What each battery, wired alternator and other source can feed. The way with the fewest fuses counts, then the shortest.</summary>
    public ImmutableArray<SupplyTree> Feeds() =>
        [.. gear.Where(g => g is Battery or GeneralSource || (g is Alternator && !conductorsAt[table.Of(g, "+").Index].IsEmpty)).Select(g => Trace(table.Of(g, "+")))];

    public ImmutableArray<LoadPath> Loads() =>
        [.. gear.Select(g => g switch
        {
            Amplifier or Processor or Load => (g, table.Of(g, "+"), table.Of(g, "-")),
            HeadUnit => (g, table.Of(g, "battery"), table.Of(g, "-")),
            LevelAdapter when !conductorsAt[table.Of(g, "+").Index].IsEmpty => (g, table.Of(g, "+"), table.Of(g, "-")),
            Relay when !conductorsAt[table.Of(g, "86").Index].IsEmpty => (g, table.Of(g, "86"), table.Of(g, "85")),
            _ => ((Gear, Terminal, Terminal)?)null,
        }).OfType<(Gear Gear, Terminal Plus, Terminal Minus)>().Select(x => PathOf(x.Gear, x.Plus, x.Minus))];

    private SupplyTree Trace(Terminal source)
    {
        var fuses = Enumerable.Repeat(int.MaxValue, count).ToArray();
        var length = Enumerable.Repeat(double.MaxValue, count).ToArray();
        var ways = new TracedPath?[count];
        var done = new bool[count];
        var fed = ImmutableArray.CreateBuilder<ProtectedConductor>();
        var seen = new HashSet<int>();
        var queue = new PriorityQueue<Terminal, (int Fuses, double Length, int Index)>();
        fuses[source.Index] = 0;
        length[source.Index] = 0;
        ways[source.Index] = new([], []);
        queue.Enqueue(source, (0, 0, source.Index));
        while (queue.TryDequeue(out var here, out _))
        {
            if (done[here.Index])
            {
                continue;
            }

            done[here.Index] = true;
            var way = ways[here.Index]!;
            foreach (var conductor in conductorsAt[here.Index])
            {
                if (seen.Add(conductor.Index))
                {
                    fed.Add(new(conductor, here, new(length[here.Index]), way.Protections, way.Through));
                }

                Reach(conductor.Other(here), fuses[here.Index], length[here.Index] + conductor.Length.Value, way with { Through = way.Through.Add(conductor) });
            }

            foreach (var link in linksAt[here.Index].Where(l => Passes(l, here)))
            {
                Reach(link.Other(here), fuses[here.Index] + (link.Protects ? 1 : 0), length[here.Index], link.Protects ? way with { Protections = way.Protections.Add(link) } : way);
            }
        }

        return new(source, fed.ToImmutable());

        void Reach(Terminal next, int f, double l, TracedPath way)
        {
            if (!done[next.Index] && (f, l).CompareTo((fuses[next.Index], length[next.Index])) < 0)
            {
                (fuses[next.Index], length[next.Index], ways[next.Index]) = (f, l, way);
                queue.Enqueue(next, (f, l, next.Index));
            }
        }
    }

    private static bool Passes(InternalConnection link, Terminal from) =>
        link.Kind is not (ConnectionKind.Chassis or ConnectionKind.FactoryLead) && (link.Kind != ConnectionKind.Diode || link.A.Index == from.Index);

    private LoadPath PathOf(Gear device, Terminal plus, Terminal minus)
    {
        var supplyTaken = device.InVehicle && conductorsAt[plus.Index].IsEmpty;
        var returnTaken = device.InVehicle && conductorsAt[minus.Index].IsEmpty;
        var (source, supply) = Search(plus, IsSource, backwards: true, shields: false);
        var (end, back) = Search(minus, IsReturn, backwards: false, shields: false);
        var throughShield = false;
        if (end is null && !returnTaken)
        {
            (_, back) = Search(minus, IsReturn, backwards: false, shields: true);
            throughShield = !back.IsEmpty;
        }

        return new(device, plus, minus, source, [.. supply.Reverse().Select(Turned)], back, end is not null || returnTaken, supplyTaken, throughShield);
    }

    private static PathStep Turned(PathStep step) => step with { Enters = step.Leaves, Leaves = step.Enters };

    private static bool IsSource(Terminal t) =>
        (t.Gear is Battery or Alternator or GeneralSource && t.Shape.Name == "+") || t.Gear is IgnitionSource or TapPoint { Carries.Value: "constant" or "accessory" };

    private bool IsReturn(Terminal t) =>
        t.Index == table.Body.Index || (t.Gear is Battery or Alternator or GeneralSource && t.Shape.Name == "-");

    /// <summary>The fewest steps from a terminal to one that fits. Signal shields count only where nothing else leads there.</summary>
    private (Terminal? End, ImmutableArray<PathStep> Steps) Search(Terminal start, Func<Terminal, bool> fits, bool backwards, bool shields)
    {
        // A search goes a short way: tables of all terminals would cost more than the search, once for every load.
        var came = new Dictionary<int, PathStep?> { [start.Index] = null };
        var queue = new Queue<Terminal>([start]);
        while (queue.TryDequeue(out var here))
        {
            if (fits(here) && here.Index != start.Index)
            {
                var steps = new List<PathStep>();
                for (var t = here; t.Index != start.Index; t = came[t.Index]!.Enters)
                {
                    steps.Add(came[t.Index]!);
                }

                steps.Reverse();
                return (here, [.. steps]);
            }

            if (here.Index == table.Body.Index)
            {
                continue;
            }

            foreach (var c in conductorsAt[here.Index])
            {
                Go(c.Other(here), new(c, null, here, c.Other(here)));
            }

            foreach (var l in linksAt[here.Index])
            {
                var from = backwards ? l.Other(here) : here;
                if (l.Kind != ConnectionKind.Diode || l.A.Index == from.Index)
                {
                    Go(l.Other(here), new(null, l, here, l.Other(here)));
                }
            }

            if (shields && here.Gear is { } device && IsGroundInside(here))
            {
                // Inside a device the shields of its signal sockets sit on its ground.
                foreach (var t in groundsInside[device.Id])
                {
                    Go(t, new(null, null, here, t));
                }
            }
        }

        return (null, []);

        void Go(Terminal next, PathStep step)
        {
            if (came.TryAdd(next.Index, step))
            {
                queue.Enqueue(next);
            }
        }
    }

    private static bool IsGroundInside(Terminal t) => (t.Role == TerminalRole.Line && t.Side == '-') || (t.Role == TerminalRole.Ground && t.Shape.Name == "-");

    private sealed record TracedPath(ImmutableArray<InternalConnection> Protections, ImmutableArray<Conductor> Through);
}
