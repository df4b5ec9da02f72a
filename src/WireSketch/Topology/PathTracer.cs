using System.Collections.Immutable;
using WireSketch.Language;

namespace WireSketch.Topology;

/// <summary>Walks the graph of terminals: what a source can feed, how current comes to a load and how it goes back.</summary>
internal sealed class PathTracer(
    ImmutableArray<Gear> gear,
    ImmutableArray<SourceTerminals> sources,
    TerminalTable table,
    ImmutableArray<ImmutableArray<Conductor>> conductorsAt,
    ImmutableArray<ImmutableArray<InternalConnection>> linksAt)
{
    private readonly int count = table.All.Count;
    private readonly ShortestPaths toSources =
        new(table.All.Where(TerminalRoles.FeedsLoads), table.Body, Pass.AgainstDiodes, conductorsAt, linksAt, turned: true);

    private readonly ShortestPaths toReturns =
        new(table.All.Where(TerminalRoles.TakesBack), table.Body, Pass.AlongDiodes, conductorsAt, linksAt, turned: false);

    private readonly TerminalGraph graph = new(t => conductorsAt[t.Index], t => linksAt[t.Index]);
    private readonly ILookup<string, Terminal> groundsInside = table.All.Where(t => t.Gear is not null && TerminalRoles.IsGroundInside(t))
        .ToLookup(t => t.Gear!.Id, StringComparer.Ordinal);

    /// <summary>
    /// What each battery, wired alternator and other source can feed. The way with the fewest fuses counts, then the shortest.
    /// </summary>
    public ImmutableArray<SupplyTree> Feeds() =>
        [
            .. sources.Where(s => s.HasPoles && (s.Source is not AlternatorSource || !conductorsAt[s.Plus.Index].IsEmpty))
                .Select(s => Trace(s.Plus))
        ];

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
        var known = new Dictionary<int, ProtectedConductor>();
        var queue = new PriorityQueue<Terminal, (int Fuses, double Length, int Index)>();
        var came = new (Terminal From, Conductor? Conductor, InternalConnection? Link)[count];
        fuses[source.Index] = 0;
        length[source.Index] = 0;
        queue.Enqueue(source, (0, 0, source.Index));
        while (queue.TryDequeue(out var here, out _))
        {
            if (done[here.Index])
            {
                continue;
            }

            done[here.Index] = true;
            var way = ways[here.Index] = WayTo(here);
            foreach (var conductor in conductorsAt[here.Index])
            {
                if (!known.ContainsKey(conductor.Index))
                {
                    fed.Add(known[conductor.Index] = new(conductor, here, new(length[here.Index]), way.Protections, way.Last));
                }

                Reach(conductor.Other(here), fuses[here.Index], length[here.Index] + conductor.Length.Value, (here, conductor, null));
            }

            foreach (var link in linksAt[here.Index].Where(l => Pass.Feeding(l, here)))
            {
                Reach(link.Other(here), fuses[here.Index] + (link.Protects ? 1 : 0), length[here.Index], (here, null, link));
            }
        }

        return new(source, fed.ToImmutable());

        void Reach(Terminal next, int f, double l, (Terminal From, Conductor? Conductor, InternalConnection? Link) step)
        {
            if (!done[next.Index] && (f, l).CompareTo((fuses[next.Index], length[next.Index])) < 0)
            {
                (fuses[next.Index], length[next.Index], came[next.Index]) = (f, l, step);
                queue.Enqueue(next, (f, l, next.Index));
            }
        }

        // Only of the way that is taken: what lies along one way shares its protections.
        TracedPath WayTo(Terminal here)
        {
            if (here.Index == source.Index)
            {
                return new([], null);
            }

            var (from, conductor, link) = came[here.Index];
            var before = ways[from.Index]!;
            return conductor is not null ? before with { Last = known[conductor.Index] }
                : link!.Protects ? before with { Protections = before.Protections.Add(link) }
                : before;
        }
    }

    private LoadPath PathOf(Gear device, PowerInput input, Terminal plus, Terminal minus)
    {
        var supplyTaken = device.InVehicle && conductorsAt[plus.Index].IsEmpty;
        var returnTaken = device.InVehicle && conductorsAt[minus.Index].IsEmpty;
        var (source, supply) = toSources.From(plus);
        var (end, back) = toReturns.From(minus);
        var throughShield = false;
        if (end is null && !returnTaken)
        {
            back = ThroughShields(minus);
            throughShield = !back.IsEmpty;
        }

        return new(device, plus, minus, source, supply, back, end is not null || returnTaken, supplyTaken, throughShield) { Input = input };
    }

    /// <summary>The fewest steps back where signal shields count too: for what nothing else leads back from.</summary>
    private ImmutableArray<PathStep> ThroughShields(Terminal minus) =>
        graph.From(minus)
            .Over(Follow.All, Pass.AlongDiodes)
            .EndingAt(t => t.Index == table.Body.Index)
            .Sharing(GroundsInside)
            .PathTo(TerminalRoles.TakesBack) is var (_, steps)
            ? [.. steps.Select(s => new PathStep(s.Conductor, s.Link, s.From, s.To))]
            : [];

    private IEnumerable<Terminal> GroundsInside(Terminal here) =>
        here.Gear is { } device && TerminalRoles.IsGroundInside(here) ? groundsInside[device.Id] : [];

    /// <summary>A way from the source: its fuses and breakers, and the last conductor on it.</summary>
    private sealed record TracedPath(ImmutableArray<InternalConnection> Protections, ProtectedConductor? Last);
}
