using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

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
        var fed = from own in install.Reaches
                  from conductor in own.Own
                  where ReversedSupplies.IsMinus(conductor.Far)
                  select (own.Feed.Source, conductor);
        foreach (var (source, conductor) in fed.DistinctBy(x => x.conductor.Far.Index))
        {
            var (run, minus) = (RunText.Of(install, conductor.Conductor), conductor.Far);
            var plus = minus.Gear!.Terminals.First(t => t.Role == TerminalRole.Supply);
            yield return Report(
                run.Run.To.Concat(run.Run.From).First(w => w.Value.StartsWith(minus.Gear.Id, StringComparison.Ordinal)).At,
                $"{run.Id} brings {source} to {minus}: {minus.Gear.Id} is wired the wrong way round",
                $"wire {run.Id} to {minus.Gear.Id}.{plus.Name} and ground {minus}", minus.Gear.Id, run.Id);
        }

        foreach (var load in install.Wiring.Loads.Where(l => !(install.IsSupplied(l.Minus) && ReversedSupplies.IsMinus(l.Minus))))
        {
            if (ReversedSupplies.MinusAtPlus(install.Wiring, load) is var (run, source))
            {
                yield return Report(
                    RunText.LandsAt(run, source),
                    $"{run.Id} brings {source} to {load.Plus}: the supply of {load.Gear.Id} is reversed, taken from a minus",
                    $"take {run.Id} from {source.Gear!.Id}.+, and keep {source} on the body", load.Gear.Id, run.Id);
            }
        }
    }

}
