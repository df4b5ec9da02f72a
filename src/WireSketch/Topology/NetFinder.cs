using System.Collections.Immutable;
using WireSketch.Language;

namespace WireSketch.Topology;

/// <summary>Finds which terminals are one node.</summary>
internal static class NetFinder
{
    public static (ImmutableArray<Net> All, ImmutableArray<Net> Of) Find(
        IReadOnlyList<Terminal> terminals,
        IReadOnlyList<Conductor> conductors,
        ImmutableArray<InternalConnection> links)
    {
        var joined = new UnionFind(terminals.Count);
        foreach (var c in conductors)
        {
            joined.Join(c.From.Index, c.To.Index);
        }

        foreach (var l in links.Where(l => l.Kind == ConnectionKind.Joint))
        {
            joined.Join(l.A.Index, l.B.Index);
        }

        var names = new string?[terminals.Count];
        foreach (var c in conductors)
        {
            // Both cores of a cable belong to one run; a net of its own needs a name of its own.
            names[joined.Root(c.From.Index)] ??= c.Id;
        }

        var members = terminals.GroupBy(t => joined.Root(t.Index))
            .OrderBy(g => g.Key)
            .Select(g => (Root: g.Key, Net: new Net(names[g.Key] ?? terminals[g.Key].Id, [.. g])))
            .ToArray();
        var of = new Net[terminals.Count];
        foreach (var (_, net) in members)
        {
            foreach (var t in net.Terminals)
            {
                of[t.Index] = net;
            }
        }

        return ([.. members.Select(m => m.Net)], [.. of]);
    }

    /// <summary>The kind of each run; a run between neutral terminals carries what other runs of its net carry.</summary>
    public static Dictionary<string, RunKind> Kinds(ImmutableArray<WiredRun> runs, ImmutableArray<Net> netOf)
    {
        var kinds = new Dictionary<string, RunKind>(StringComparer.Ordinal);
        var neutral = new List<WiredRun>();
        var known = new Dictionary<string, RunKind>(StringComparer.Ordinal);
        foreach (var run in runs)
        {
            kinds.TryAdd(run.Id, run.Kind);
            if (run.From.Concat(run.To).All(e => e.Shape.Role == TerminalRole.Any))
            {
                neutral.Add(run);
                continue;
            }

            foreach (var c in run.Conductors)
            {
                known.TryAdd(netOf[c.From.Index].Id, run.Kind);
                known.TryAdd(netOf[c.To.Index].Id, run.Kind);
            }
        }

        // A ground terminal anywhere in the net settles it even where no run there names one.
        foreach (var run in neutral)
        {
            var net = run.Conductors.Select(c => netOf[c.From.Index]).FirstOrDefault();
            if (net is not null)
            {
                kinds[run.Id] = known.TryGetValue(net.Id, out var kind) ? kind
                    : net.Terminals.Any(t => t.Role == TerminalRole.Ground) ? RunKind.Ground
                    : RunKind.Supply;
            }
        }

        return kinds;
    }
}
