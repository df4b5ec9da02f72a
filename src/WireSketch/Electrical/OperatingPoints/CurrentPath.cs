using System.Collections.Immutable;
using WireSketch.Electrical.Solver;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>
/// Follows a load's current, in a solved state, back to the source that gives most of it, and on to that source's minus. A battery that is
/// being charged gives nothing: the way leads through it to what charges it.
/// </summary>
internal sealed class CurrentPath(Wiring wiring, SupplyCircuit supply, DcSolution answer)
{
    /// <summary>Amperes below which nothing flows.</summary>
    private const double Nothing = 1e-9;

    // Every load behind a terminal goes the same way from there.
    private readonly Dictionary<int, (double Amps, PathStep? Step)> into = [];
    private readonly Dictionary<int, PathStep?> outOf = [];

    /// <summary>The load's way with the source that gives in this state; as the fewest steps have it where nothing else is found.</summary>
    public LoadPath Of(LoadPath path)
    {
        var (source, steps) = Upstream(path.Plus, TerminalRoles.IsOfSupply);
        if (source is null || path.Source is null)
        {
            return path;
        }

        var home = wiring.ReturnOf(source);
        var (end, back) = Downstream(path.Minus, home);
        if (end is null)
        {
            back = path.Return;
            end = back.IsEmpty ? path.Minus : back[^1].Leaves;
        }

        if (end.Index == wiring.Body.Index
            && home.Index != end.Index
            && Upstream(home, t => t.Index == wiring.Body.Index) is (not null, var lead))
        {
            back = back.AddRange(lead);
        }

        return path with { Source = source, Supply = steps, Return = back };
    }

    private (Terminal? End, ImmutableArray<PathStep> Steps) Upstream(Terminal start, Func<Terminal, bool> ends)
    {
        var steps = new List<PathStep>();
        for (var here = start; ;)
        {
            var (amps, step) = Into(here);
            if (ends(here) && (here.Index == wiring.Body.Index || Given(here) >= amps || step is null))
            {
                steps.Reverse();
                return (here, [.. steps]);
            }

            if (step is null || IsRound(steps))
            {
                return (null, []);
            }

            steps.Add(step);
            here = step.Enters;
        }
    }

    private (Terminal? End, ImmutableArray<PathStep> Steps) Downstream(Terminal start, Terminal home)
    {
        var steps = new List<PathStep>();
        for (var here = start; ;)
        {
            if (here.Index == home.Index || here.Index == wiring.Body.Index)
            {
                return (here, [.. steps]);
            }

            if (OutOf(here) is not { } outward || IsRound(steps))
            {
                return (null, []);
            }

            steps.Add(outward);
            here = outward.Leaves;
        }
    }

    /// <summary>A way over more steps than there are terminals goes round and round.</summary>
    private bool IsRound(List<PathStep> steps) => steps.Count > wiring.Terminals.Length;

    /// <summary>What a source gives at its plus; the vehicle's own alternator gives at the first battery's.</summary>
    private double Given(Terminal plus)
    {
        return supply.Sources.Where(s =>
            s.Plus == plus.Index || (s.Plus >= wiring.Terminals.Length && wiring.Starter?.Plus.Index == plus.Index))
            .Sum(s => Math.Max(0, -answer.Amps[s.Branch]));
    }

    /// <summary>The step by which most current comes to a terminal.</summary>
    private (double Amps, PathStep? Step) Into(Terminal here)
    {
        if (!into.TryGetValue(here.Index, out var known))
        {
            var most = Around(here).Where(s => s.Amps > Nothing).OrderByDescending(s => s.Amps).FirstOrDefault();
            into[here.Index] = known = (most.Amps, most.Step);
        }

        return known;
    }

    /// <summary>The step by which most current leaves a terminal.</summary>
    private PathStep? OutOf(Terminal here)
    {
        if (!outOf.TryGetValue(here.Index, out var known))
        {
            var most = Around(here).Where(s => s.Amps < -Nothing).OrderBy(s => s.Amps).FirstOrDefault().Step;
            outOf[here.Index] = known = most is null ? null : most with { Enters = here, Leaves = most.Enters };
        }

        return known;
    }

    /// <summary>Everything on a terminal that takes part in the circuit, as a step to it, with the current that comes in by it.</summary>
    private IEnumerable<(double Amps, PathStep? Step)> Around(Terminal here) =>
        wiring.ConductorsAt[here.Index].Where(c => supply.ConductorBranch[c.Index] >= 0)
            .Select(c =>
                (
                    answer.Amps[supply.ConductorBranch[c.Index]] * (c.To.Index == here.Index ? 1 : -1),
                    (PathStep?)new PathStep(c, null, c.Other(here), here)))
            .Concat(wiring.LinksAt[here.Index].Where(l => supply.LinkBranch[l.Index] >= 0)
                .Select(l =>
                    (
                        answer.Amps[supply.LinkBranch[l.Index]] * (l.B.Index == here.Index ? 1 : -1),
                        (PathStep?)new PathStep(null, l, l.Other(here), here))));
}
