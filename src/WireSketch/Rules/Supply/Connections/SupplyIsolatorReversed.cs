using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>An isolator with main and second swapped.</summary>
internal sealed class SupplyIsolatorReversed : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/isolator-reversed",
        Severity.Error,
        Title: "The isolator is wired the wrong way round",
        Why: """
            Main belongs to the battery that the alternator charges. The other way round a diode never lets the second battery be charged,
            and a relay that senses voltage never closes, or closes on the wrong battery.
            """,
        new Basis.Reasoning("the alternator charges the first battery; an isolator joins main to second"),
        Bad: """
            gear:
              starter-battery: { is: battery, origin: factory, capacity: 70 Ah }
              house-battery: { is: battery, capacity: 90 Ah }
              relay: { is: isolator, type: voltage sensing, rating: 140 A }
              rear-bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter-battery.+, to: relay.second, wire: 4 AWG red, length: 3 ft, #! supply/isolator-reversed
                  fuse: { rating: 100 A, at: 10 in } }
              P2: { from: house-battery.+, to: relay.main, wire: 4 AWG red, length: 15 ft, fuse: { rating: 100 A, at: 10 in } }
              G1: { from: house-battery.-, to: rear-bolt, wire: 4 AWG black, length: 14 in }
              G2: { from: relay.-, to: rear-bolt, wire: 16 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              starter-battery: { is: battery, origin: factory, capacity: 70 Ah }
              house-battery: { is: battery, capacity: 90 Ah }
              relay: { is: isolator, type: voltage sensing, rating: 140 A }
              rear-bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter-battery.+, to: relay.main, wire: 4 AWG red, length: 3 ft, fuse: { rating: 100 A, at: 10 in } }
              P2: { from: house-battery.+, to: relay.second, wire: 4 AWG red, length: 15 ft, fuse: { rating: 100 A, at: 10 in } }
              G1: { from: house-battery.-, to: rear-bolt, wire: 4 AWG black, length: 14 in }
              G2: { from: relay.-, to: rear-bolt, wire: 16 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var wiring = install.Wiring;
        if (install.Starter is not { } first)
        {
            yield break;
        }

        foreach (var isolator in install.Wiring.Links)
        {
            if (isolator is not { Join.Batteries: not null, Gear: { } gear })
            {
                continue;
            }

            var main = Sources(wiring, gear, isolator.A);
            var second = Sources(wiring, gear, isolator.B);
            var charged = second.FirstOrDefault(IsChargedFirst);
            if (charged is null || main.Any(IsChargedFirst) || main.FirstOrDefault(TerminalRoles.IsBattery) is not { } battery)
            {
                continue;
            }

            var run = RunText.Of(install, wiring.ConductorsAt[isolator.B.Index][0]);
            var end = run.From.Concat(run.To).First(e => e.Nodes.Contains(isolator.B));
            yield return Report(
                end.At,
                $"{charged.Id} is wired to {isolator.B} and {battery.Id} to {isolator.A}: "
                    + $"{(isolator.Kind == ConnectionKind.Diode ? "the diode lets no charge "
                        + $"through" : "main belongs to the battery that the alternator charges")}",
                $"swap {isolator.A} and {isolator.B}", gear.Id, run.Id);
        }

        bool IsChargedFirst(Gear gear) => gear.Id == first.Id || gear.Sources.Any(s => s is AlternatorSource);
    }

    /// <summary>Sources that a side of the isolator reaches without passing it.</summary>
    private static List<Gear> Sources(Wiring wiring, Gear isolator, Terminal side) =>
    [
        .. wiring.Graph.From(side)
            .Over(Follow.All, Pass.Around(isolator))
            .EndingAt(t => t == wiring.Body)
            .Terminals()
            .Where(t => TerminalRoles.IsSource(t.Gear)).Select(t => t.Gear!),
    ];
}
