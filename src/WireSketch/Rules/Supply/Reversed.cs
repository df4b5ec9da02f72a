using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Text;

namespace WireSketch.Rules.Supply;

/// <summary>The supply lands on a device's minus.</summary>
internal sealed class Reversed : Rule
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

    public override IEnumerable<Finding> Check(Install install) =>
        (from own in Feeding.Own(install)
         from fed in own.Own
         where IsMinus(fed.Far)
         select (own.Feed.Source, fed)).DistinctBy(x => x.fed.Far.Index)
        .Select(x => Found(
            RunWords.Of(install, x.fed.Conductor).Run.To.Concat(RunWords.Of(install, x.fed.Conductor).Run.From).First(w => w.Value.StartsWith(x.fed.Far.Gear!.Id, StringComparison.Ordinal)).At,
            $"{x.fed.Conductor.RunId} brings {x.Source} to {x.fed.Far}: {x.fed.Far.Gear!.Id} is wired the wrong way round",
            $"wire {x.fed.Conductor.RunId} to {x.fed.Far.Gear!.Id}.{(x.fed.Far.Gear is HeadUnit ? "battery" : "+")} and ground {x.fed.Far}",
            x.fed.Far.Gear.Id, x.fed.Conductor.RunId));

    /// <summary>Whether a load's minus is fed: then what it lacks follows from that.</summary>
    internal static bool Is(Install install, Topology.LoadPath load) => Feeding.Own(install).Any(f => f.Own.Any(c => c.Far.Index == load.Minus.Index));

    /// <summary>Minus of a load; a source's minus is a dead short and told as one.</summary>
    internal static bool IsMinus(Topology.Terminal t) =>
        t.Role == TerminalRole.Ground && t.Shape.Name == "-" && t.Gear is Amplifier or Processor or HeadUnit or LevelAdapter or Load or Capacitor;
}
