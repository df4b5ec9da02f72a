using System.Collections.Immutable;
using WireSketch.Language;

namespace WireSketch.Topology;

/// <summary>Walks the graph of terminals: what a source can feed, how current comes to a load and how it goes back.</summary>
internal sealed class PathTracer(
    ImmutableArray<Gear> gear, ImmutableArray<SourceTerminals> sources, TerminalTable table, ImmutableArray<ImmutableArray<Conductor>> conductorsAt, ImmutableArray<ImmutableArray<InternalConnection>> linksAt)
{
    private readonly int count = table.All.Count;
    private readonly HashSet<int> feeding = [.. sources.Where(s => s.Source is not VehicleCircuit { IsSignalOnly: true }).Select(s => s.Plus.Index)];
    private readonly HashSet<int> returns = [table.Body.Index, .. sources.Select(s => s.Minus?.Index).OfType<int>()];
    private readonly ILookup<string, Terminal> groundsInside = table.All.Where(t => t.Gear is not null && IsGroundInside(t)).ToLookup(t => t.Gear!.Id, StringComparer.Ordinal);

    /// <summary>What each battery, wired alternator and other source can feed. The way with the fewest fuses counts, then the shortest.</summary>
    public ImmutableArray<SupplyTree> Feeds() =>
        [.. sources.Where(s => s.HasPoles && (s.Source is not AlternatorSource || !conductorsAt[s.Plus.Index].IsEmpty)).Select(s => Trace(s.Plus))];

    public ImmutableArray<LoadPath> Loads() =>
        [.. gear.SelectMany(g => g.PowerInputs.Select(p => (Gear: g, Input: p, Plus: table.Of(g, p.Plus), Minus: table.Of(g, p.Minus))))
            .Where(x => !x.Input.IsOptional || !conductorsAt[x.Plus.Index].IsEmpty).Select(x => PathOf(x.Gear, x.Input, x.Plus, x.Minus))];

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

    private LoadPath PathOf(Gear device, PowerInput input, Terminal plus, Terminal minus)
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

        return new(device, plus, minus, source, [.. supply.Reverse().Select(Turned)], back, end is not null || returnTaken, supplyTaken, throughShield) { Input = input };
    }

    private static PathStep Turned(PathStep step) => step with { Enters = step.Leaves, Leaves = step.Enters };

    private bool IsSource(Terminal t) => feeding.Contains(t.Index);

    private bool IsReturn(Terminal t) => returns.Contains(t.Index);

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
