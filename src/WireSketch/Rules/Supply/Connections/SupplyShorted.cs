using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>The plus of a source lands on the body.</summary>
internal sealed class SupplyShorted : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/shorted",
        Severity.Error,
        Title: "The supply is wired straight to ground",
        Why: """
            A wire from a source's plus to the body, a ground block or a battery's minus, with no load between, is a dead short: it burns or
            opens its fuse the moment the battery is connected. Most often two ends were swapped when the spec was written.
            """,
        new Basis.Reasoning("plus and minus of a source joined without a load"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 10 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: pump.+, to: bolt, wire: 12 AWG black, length: 12 in } #! supply/shorted
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 10 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a run: the one that joins plus to ground.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        (from own in install.Reaches
         from fed in own.Own
         where TerminalRoles.IsGround(fed.Far)
         select (own.Feed.Source, fed)).DistinctBy(x => x.fed.Conductor.RunId)
        .Select(x => Report(
            RunText.Of(install, x.fed.Conductor).Run.Name.At,
            $"{x.fed.Conductor.RunId} joins {x.fed.Near}, which {x.Source} feeds, to {x.fed.Far}: a dead short",
            $"move one end of {x.fed.Conductor.RunId}; a load's - goes to ground, its + to the supply",
            x.fed.Conductor.RunId, x.Source.Id));
}
