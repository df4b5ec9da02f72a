using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>Too many lugs on one bolt.</summary>
internal sealed class GroundTooManyLugs : Rule
{
    /// <summary>Common practice, no published source.</summary>
    private const int Most = 4;

    public override RuleCard Card { get; } = new(
        Id: "ground/too-many-lugs",
        Severity.Advice,
        Title: "Many lugs share one bolt",
        Why: """
            Every lug between bolt and body adds a contact, and a bolt that holds more than four works loose. Bring the wires together on a
            ground block and take one thick lead from there.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              lamp-1: { is: lamp, power: 10 W }
              lamp-2: { is: lamp, power: 10 W }
              lamp-3: { is: lamp, power: 10 W }
              lamp-4: { is: lamp, power: 10 W }
              lamp-5: { is: lamp, power: 10 W }
              bolt: { is: chassis point, surface: bare metal } #! ground/too-many-lugs
            runs:
              P1: { from: battery.+, to: [lamp-1.+, lamp-2.+, lamp-3.+, lamp-4.+, lamp-5.+], wire: 14 AWG red, length: 6 ft, link: 1 ft,
                  fuse: { rating: 10 A, at: 8 in } }
              G1: { from: lamp-1.-, to: bolt, wire: 14 AWG black, length: 12 in }
              G2: { from: lamp-2.-, to: bolt, wire: 14 AWG black, length: 12 in }
              G3: { from: lamp-3.-, to: bolt, wire: 14 AWG black, length: 12 in }
              G4: { from: lamp-4.-, to: bolt, wire: 14 AWG black, length: 12 in }
              G5: { from: lamp-5.-, to: bolt, wire: 14 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              lamp-1: { is: lamp, power: 10 W }
              lamp-2: { is: lamp, power: 10 W }
              lamp-3: { is: lamp, power: 10 W }
              lamp-4: { is: lamp, power: 10 W }
              lamp-5: { is: lamp, power: 10 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: [lamp-1.+, lamp-2.+, lamp-3.+, lamp-4.+, lamp-5.+], wire: 14 AWG red, length: 6 ft, link: 1 ft,
                  fuse: { rating: 10 A, at: 8 in } }
              G1: { from: bolt, to: [lamp-1.-, lamp-2.-, lamp-3.-, lamp-4.-, lamp-5.-], wire: 14 AWG black, length: 12 in, link: 1 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from point in install.Spec.Gear
        where TerminalRoles.IsBodyBolt(point)
        let lugs = install.Wiring.ConductorsAt[install.Wiring.TerminalsOf(point)[0].Index]
        where lugs.Length > Most
        select Report(
            point.Name.At,
            $"{lugs.Length:measured} lugs share one bolt at {point.Id} "
                + $"({RunText.List(lugs.Select(l => l.RunId).Distinct(StringComparer.Ordinal))}); {Most:limit} is the most",
            "bring them together on a ground block, and take one thick lead to the bolt", point.Id);
}
