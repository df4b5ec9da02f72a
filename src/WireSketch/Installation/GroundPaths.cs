using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>How current goes back.</summary>
internal static class GroundPaths
{
    /// <summary>Whether wires lead from a terminal to the body or to the minus of another source; signal shields do not count.</summary>
    public static bool Reaches(Wiring wiring, Terminal start) =>
        Island(wiring, start).Select(i => wiring.Terminals[i])
            .Any(t => t.Index == wiring.Body.Index || (t.Index != start.Index && TerminalRoles.IsSourceMinus(t)));

    /// <summary>Every terminal, by index, that wires and ways through devices lead to; signal shields do not count.</summary>
    public static HashSet<int> Island(Wiring wiring, Terminal start) =>
        wiring.Graph.From(start).Over(Follow.WithoutShields, Pass.All).Reached();

    /// <summary>
    /// The conductors by which a terminal reaches the body by the fewest steps, nearest to the terminal first; none if nothing leads
    /// there.
    /// </summary>
    public static ImmutableArray<Conductor> ToBody(Wiring wiring, Terminal start) =>
        wiring.Graph.From(start).Over(Follow.WithoutShields, Pass.All).PathTo(t => t.Index == wiring.Body.Index) is var (_, steps)
            ? [.. steps.Select(s => s.Conductor).OfType<Conductor>()]
            : [];

    /// <summary>Copper of a conductor together with those parallel to it: the same two terminals, or outputs of the same blocks.</summary>
    public static double Copper(Wiring wiring, Conductor conductor)
    {
        // Of a hub that a thousand wires leave, the other end knows the few that lie side by side.
        var end = Landing(conductor.From) <= Landing(conductor.To) ? conductor.From : conductor.To;
        return Ends(end).SelectMany(t => wiring.ConductorsAt[t.Index]).Distinct()
            .Where(c => !c.IsShield && (Joins(c, conductor.From, conductor.To) || Joins(c, conductor.To, conductor.From)))
            .Sum(WireSizes.CopperArea);

        int Landing(Terminal t) => Ends(t).Sum(e => wiring.ConductorsAt[e.Index].Length);

        IEnumerable<Terminal> Ends(Terminal t) =>
            IsJoint(t.Gear) ? wiring.NetOf[t.Index].Terminals.Where(n => ReferenceEquals(n.Gear, t.Gear)) : [t];

        static bool Joins(Conductor c, Terminal a, Terminal b) => Same(c.From, a) && Same(c.To, b);

        static bool Same(Terminal a, Terminal b) => a.Index == b.Index || (IsJoint(a.Gear) && ReferenceEquals(a.Gear, b.Gear));

        static bool IsJoint(Gear? gear) => gear is not null && gear.Joins.Any(j => j is TerminalJoin { Kind: ConnectionKind.Joint });
    }

    /// <summary>The chassis point at which a load's return reaches the body; null if it goes back another way.</summary>
    public static Gear? PointOf(LoadPath load) =>
        load.Return.Select(s => s.Link is { Kind: ConnectionKind.Chassis } ? s.Link.Gear : null)
            .FirstOrDefault(p => p is not null);

    /// <summary>Devices whose ground is heard: those of the signal chain.</summary>
    public static bool IsAudio(Gear gear) =>
        gear.PowerInputs.Any(p => p.Takes is OutputDraw or ElectronicsDraw)
            || (!gear.PowerInputs.IsEmpty && !gear.SignalInputs.IsEmpty);
}
