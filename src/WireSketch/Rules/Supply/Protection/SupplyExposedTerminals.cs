using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A breaker or block in the engine bay whose live studs nothing covers.</summary>
internal sealed class SupplyExposedTerminals : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/exposed-terminals",
        Severity.Warning,
        Title: "Live studs stand open in the engine bay",
        Why: """
            A wrench between an open stud and the body is a dead short ahead of the fuse; road water makes the contacts rot. A breaker,
            block or bus bar there needs a cover, a boot or a box. Write covered: true once it has one.
            """,
        new Basis.Published(
            $"33 CFR 183.445(b): a continuously energized ungrounded terminal has a boot, nipple, cap, cover or shield; written for "
                + $"boats, taken here as good practice"),
        Bad: """
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              main-breaker: { is: breaker, zone: engine bay, rating: 50 A } #! supply/exposed-terminals
              pump: { is: pump, zone: engine bay, current: 30 A }
              strut: { is: chassis point, zone: engine bay, surface: bare metal }
            runs:
              P1: { from: battery.+, to: main-breaker.in, wire: 6 AWG red 105 C, length: 6 in }
              P2: { from: main-breaker.out, to: pump.+, wire: 6 AWG red 105 C, length: 4 ft, protect: loom }
              G1: { from: pump.-, to: strut, wire: 6 AWG black 105 C, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, zone: engine bay, origin: factory, capacity: 70 Ah }
              main-breaker: { is: breaker, zone: engine bay, place: on the battery tray, covered: true, rating: 50 A }
              pump: { is: pump, zone: engine bay, current: 30 A }
              strut: { is: chassis point, zone: engine bay, surface: bare metal }
            runs:
              P1: { from: battery.+, to: main-breaker.in, wire: 6 AWG red 105 C, length: 6 in }
              P2: { from: main-breaker.out, to: pump.+, wire: 6 AWG red 105 C, length: 4 ft, protect: loom }
              G1: { from: pump.-, to: strut, wire: 6 AWG black 105 C, length: 12 in }
            """);

    /// <summary>Inline holders come closed, unless it is written that one does not.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var open = install.Spec.Zones.Where(z => z.IsEngineBay || z.Exposed).ToDictionary(z => z.Id, StringComparer.Ordinal);
        foreach (var gear in install.Spec.Gear)
        {
            if (gear.StudCover == StudCover.Open
                && !gear.InVehicle
                && gear.Zone is { } zone
                && open.ContainsKey(zone)
                && !gear.IsCovered)
            {
                yield return Report(
                    gear.Name.At, $"{gear.Id} stands in the {zone}, and nothing says that its live studs are covered",
                    "cover it, and write covered: true", gear.Id);
            }
        }

        foreach (var run in install.Wiring.Runs)
        {
            if (run.Holder is { Zone: { } zone } && open.ContainsKey(zone) && run.Run.Protection is { Covered.Value: false } device)
            {
                yield return Report(
                    device.Covered!.Value.At,
                    $"the {(device.Breaker ? "breaker" : "fuse")} of {run.Id} stands in the {zone}, and its live studs are not covered",
                    "cover it, and write covered: true", run.Id);
            }
        }
    }
}
