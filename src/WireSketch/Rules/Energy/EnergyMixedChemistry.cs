using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Energy;

/// <summary>Batteries of unlike cells charged as one.</summary>
internal sealed class EnergyMixedChemistry : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "energy/mixed-chemistry",
        Severity.Warning,
        Title: "Batteries of unlike chemistry are joined directly",
        Why: """
            A lithium battery takes all the current an alternator has and wants another voltage than lead; gel boils at what a flooded
            battery likes. Joined by a cable, a relay or a diode they charge each other wrongly. Put a DC-DC charger between them.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              starter-battery: { is: battery, origin: factory, capacity: 70 Ah }
              house-battery: { is: battery, chemistry: lithium, capacity: 100 Ah } #! energy/mixed-chemistry
              relay: { is: isolator, type: voltage sensing, rating: 140 A }
              rear-bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter-battery.+, to: relay.main, wire: 4 AWG red, length: 3 ft,
                    fuse: { rating: 100 A, style: strip, at: 10 in } }
              P2: { from: house-battery.+, to: relay.second, wire: 4 AWG red, length: 15 ft,
                    fuse: { rating: 100 A, style: class T, breaking: 20000 A, at: 10 in } }
              G1: { from: house-battery.-, to: rear-bolt, wire: 4 AWG black, length: 14 in }
              G2: { from: relay.-, to: rear-bolt, wire: 16 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              starter-battery: { is: battery, origin: factory, capacity: 70 Ah }
              house-battery: { is: battery, chemistry: AGM, capacity: 100 Ah }
              relay: { is: isolator, type: voltage sensing, rating: 140 A }
              rear-bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter-battery.+, to: relay.main, wire: 4 AWG red, length: 3 ft,
                    fuse: { rating: 100 A, style: strip, at: 10 in } }
              P2: { from: house-battery.+, to: relay.second, wire: 4 AWG red, length: 15 ft,
                    fuse: { rating: 100 A, style: strip, at: 10 in } }
              G1: { from: house-battery.-, to: rear-bolt, wire: 4 AWG black, length: 14 in }
              G2: { from: relay.-, to: rear-bolt, wire: 16 AWG black, length: 10 in }
            """);

    /// <summary>Flooded and AGM charge alike; gel and lithium go with their own kind only.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var batteries = install.Wiring.Sources.Where(s => s.Source is BatterySource).ToArray();
        for (var i = 1; i < batteries.Length; i++)
        {
            var second = batteries[i];
            var other = batteries.Take(i).FirstOrDefault(b => Family(b) != Family(second) && AreJoined(install.Wiring, b, second));
            if (other is not null)
            {
                var (chemistry, otherChemistry) = (ChemistryOf(second), ChemistryOf(other));
                yield return Report(
                    chemistry?.At ?? second.Gear.Name.At,
                    $"{second.Id} is {chemistry?.Words ?? "flooded"} and {other.Id} {otherChemistry?.Words ?? "flooded"}, and "
                        + $"nothing but wire, fuses and contacts stands between them",
                    $"put a DC-DC charger between {other.Id} and {second.Id}: a general source with its current, wired to {second.Id}",
                    second.Id,
                    other.Id);
            }
        }
    }

    private static Written<Chemistry>? ChemistryOf(SourceTerminals battery) => ((BatterySource)battery.Source).Chemistry;

    private static string Family(SourceTerminals battery) =>
        ChemistryOf(battery) is { Value: Chemistry.Gel or Chemistry.Lithium } own ? own.Words : "lead";

    private static bool AreJoined(Wiring wiring, SourceTerminals a, SourceTerminals b) =>
        wiring.Feeds.Where(f => f.Source.Index == a.Plus.Index)
            .SelectMany(f => f.Conductors)
            .Any(c => c.Far.Index == b.Plus.Index);
}
