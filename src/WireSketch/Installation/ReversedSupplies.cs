using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Loads wired the wrong way round: plus and minus exchanged.</summary>
internal static class ReversedSupplies
{
    /// <summary>Whether a load is wired the wrong way round: then what it lacks follows from that.</summary>
    public static bool Is(InstalledSystem install, LoadPath load) =>
        MinusAtPlus(install.Wiring, load) is not null || SourceReach.Own(install).Any(f => f.Own.Any(c => c.Far.Index == load.Minus.Index));

    /// <summary>The minus of a source that wires bring to the plus of a load which no source feeds, and the run that lands on that minus; null if none does.</summary>
    public static (WiredRun Run, Terminal Source)? MinusAtPlus(Wiring wiring, LoadPath load)
    {
        var seen = new HashSet<int> { wiring.Body.Index };
        var queue = new Queue<Terminal>(load.Source is null ? [load.Plus] : []);
        while (queue.TryDequeue(out var here))
        {
            if (!seen.Add(here.Index))
            {
                continue;
            }

            foreach (var conductor in wiring.ConductorsAt[here.Index].Where(c => !c.IsShield))
            {
                var next = conductor.Other(here);
                if (next.Role == TerminalRole.Ground && next.Gear is Battery or Alternator or GeneralSource)
                {
                    return (wiring.RunsById[conductor.RunId], next);
                }

                queue.Enqueue(next);
            }

            foreach (var link in wiring.LinksAt[here.Index].Where(l => l.Kind is not (ConnectionKind.Chassis or ConnectionKind.FactoryLead)))
            {
                queue.Enqueue(link.Other(here));
            }
        }

        return null;
    }

    /// <summary>Minus of a load; a source's minus is a dead short and told as one.</summary>
    public static bool IsMinus(Terminal t) =>
        t.Role == TerminalRole.Ground && t.Shape.Name == "-" && t.Gear is Amplifier or Processor or HeadUnit or LevelAdapter or Load or Capacitor;
}
