using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>The supply lands on a device's minus.</summary>
internal sealed class SupplyReversed : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/reversed",
        Severity.Error,
        Title: "The supply is wired to a device's minus",
        Why: """
            Most electronics do not survive reversed polarity for a second; with a protecting diode inside it is the fuse that goes. Plus of
            the source goes to +, ground to -.
            """,
        new Basis.Reasoning("the source's plus reaches the device's minus without a load between"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.-, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } } #! supply/reversed
              G1: { from: fridge.+, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var fed = from own in SourceReach.Own(install)
                  from conductor in own.Own
                  where IsMinus(conductor.Far)
                  select (own.Feed.Source, conductor);
        foreach (var (source, conductor) in fed.DistinctBy(x => x.conductor.Far.Index))
        {
            var (run, minus) = (RunText.Of(install, conductor.Conductor), conductor.Far);
            yield return Report(
                run.Run.To.Concat(run.Run.From).First(w => w.Value.StartsWith(minus.Gear!.Id, StringComparison.Ordinal)).At,
                $"{run.Id} brings {source} to {minus}: {minus.Gear!.Id} is wired the wrong way round",
                $"wire {run.Id} to {minus.Gear.Id}.{(minus.Gear is HeadUnit ? "battery" : "+")} and ground {minus}", minus.Gear.Id, run.Id);
        }

        foreach (var load in install.Wiring.Loads.Where(l => !fed.Any(f => f.conductor.Far.Index == l.Minus.Index)))
        {
            if (MinusAtPlus(install.Wiring, load) is var (run, source))
            {
                yield return Report(
                    RunText.LandsAt(run, source), $"{run.Id} brings {source} to {load.Plus}: the supply of {load.Gear.Id} is reversed, taken from a minus",
                    $"take {run.Id} from {source.Gear!.Id}.+, and keep {source} on the body", load.Gear.Id, run.Id);
            }
        }
    }

    /// <summary>Whether a load is wired the wrong way round: then what it lacks follows from that.</summary>
    internal static bool Is(InstalledSystem install, LoadPath load) =>
        MinusAtPlus(install.Wiring, load) is not null || SourceReach.Own(install).Any(f => f.Own.Any(c => c.Far.Index == load.Minus.Index));

    /// <summary>The minus of a source that wires bring to the plus of a load which no source feeds, and the run that lands on that minus; null if none does.</summary>
    private static (WiredRun Run, Terminal Source)? MinusAtPlus(Wiring wiring, LoadPath load)
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
    internal static bool IsMinus(Terminal t) =>
        t.Role == TerminalRole.Ground && t.Shape.Name == "-" && t.Gear is Amplifier or Processor or HeadUnit or LevelAdapter or Load or Capacitor;
}
