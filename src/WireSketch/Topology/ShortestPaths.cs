using System.Collections.Immutable;
using System.Runtime.InteropServices;

namespace WireSketch.Topology;

/// <summary>
/// The fewest steps from any terminal to the nearest that fits, for many starts: how far each terminal lies is found once, from the ends
/// back, and a path then only looks at steps that bring it nearer. It is the path that a walk from the start finds first.
/// </summary>
internal sealed class ShortestPaths
{
    private readonly int[] far;
    private readonly ImmutableArray<PathStep>?[] nearer;
    private readonly ImmutableArray<ImmutableArray<Conductor>> conductorsAt;
    private readonly ImmutableArray<ImmutableArray<InternalConnection>> connectionsAt;
    private readonly Passes passes;
    private readonly bool turned;

    /// <param name="ends">Where paths end.</param>
    /// <param name="last">A terminal beyond which nothing leads on.</param>
    /// <param name="passes">Which connections a path may pass, and which way.</param>
    /// <param name="conductorsAt">Conductors on each terminal.</param>
    /// <param name="connectionsAt">Internal connections of each terminal.</param>
    /// <param name="turned">Steps are told from the end to the start, as current flows from a source.</param>
    public ShortestPaths(
        IEnumerable<Terminal> ends, Terminal last, Passes passes, ImmutableArray<ImmutableArray<Conductor>> conductorsAt,
        ImmutableArray<ImmutableArray<InternalConnection>> connectionsAt, bool turned)
    {
        (this.conductorsAt, this.connectionsAt, this.passes, this.turned) = (conductorsAt, connectionsAt, passes, turned);
        far = new int[conductorsAt.Length];
        nearer = new ImmutableArray<PathStep>?[conductorsAt.Length];
        Array.Fill(far, int.MaxValue);
        var queue = new Queue<Terminal>();
        foreach (var end in ends)
        {
            far[end.Index] = 0;
            queue.Enqueue(end);
        }

        while (queue.TryDequeue(out var here))
        {
            foreach (var conductor in conductorsAt[here.Index])
            {
                Reach(conductor.Other(here), far[here.Index] + 1);
            }

            foreach (var connection in connectionsAt[here.Index])
            {
                if (passes(connection, connection.Other(here)))
                {
                    Reach(connection.Other(here), far[here.Index] + 1);
                }
            }
        }

        void Reach(Terminal from, int steps)
        {
            if (from.Index != last.Index && steps < far[from.Index])
            {
                far[from.Index] = steps;
                queue.Enqueue(from);
            }
        }
    }

    /// <summary>The path from a terminal, and where it ends; no end if none is reached.</summary>
    public (Terminal? End, ImmutableArray<PathStep> Steps) From(Terminal start)
    {
        if (far[start.Index] is 0 or int.MaxValue)
        {
            return (null, []);
        }

        if (Single(start) is var (only, steps))
        {
            return (only, steps);
        }

        var came = new Dictionary<int, (Terminal Before, PathStep Step)>();
        var queue = new Queue<Terminal>([start]);
        while (queue.TryDequeue(out var here))
        {
            if (far[here.Index] == 0)
            {
                return (here, Steps(start, here, came));
            }

            foreach (var step in Nearer(here))
            {
                var next = turned ? step.Enters : step.Leaves;
                if (came.TryAdd(next.Index, (here, step)))
                {
                    queue.Enqueue(next);
                }
            }
        }

        return (null, []);
    }

    /// <summary>The path where every step leaves no choice, as most do; null where one does.</summary>
    private (Terminal End, ImmutableArray<PathStep> Steps)? Single(Terminal start)
    {
        var steps = new PathStep[far[start.Index]];
        var here = start;
        for (var i = 0; i < steps.Length; i++)
        {
            if (Nearer(here) is not [var step])
            {
                return null;
            }

            steps[turned ? steps.Length - 1 - i : i] = step;
            here = turned ? step.Enters : step.Leaves;
        }

        return (here, ImmutableCollectionsMarshal.AsImmutableArray(steps));
    }

    private ImmutableArray<PathStep> Steps(Terminal start, Terminal end, Dictionary<int, (Terminal Before, PathStep Step)> came)
    {
        var steps = new PathStep[far[start.Index]];
        for (var (at, i) = (end, 0); at.Index != start.Index; at = came[at.Index].Before, i++)
        {
            steps[turned ? i : steps.Length - 1 - i] = came[at.Index].Step;
        }

        return ImmutableCollectionsMarshal.AsImmutableArray(steps);
    }

    /// <summary>Steps from a terminal to such as lie nearer to an end; shared by all paths that lead there.</summary>
    private ImmutableArray<PathStep> Nearer(Terminal here) => nearer[here.Index] ??=
    [
        .. conductorsAt[here.Index].Where(c => far[c.Other(here).Index] == far[here.Index] - 1)
            .Select(c => Step(c, null, here, c.Other(here))),
        .. connectionsAt[here.Index].Where(l => passes(l, here) && far[l.Other(here).Index] == far[here.Index] - 1)
            .Select(l => Step(null, l, here, l.Other(here))),
    ];

    private PathStep Step(Conductor? conductor, InternalConnection? connection, Terminal from, Terminal to) =>
        turned ? new(conductor, connection, to, from) : new(conductor, connection, from, to);
}
