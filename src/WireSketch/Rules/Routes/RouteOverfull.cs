using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;
using WireSketch.Topology.Routes;

namespace WireSketch.Rules.Routes;

/// <summary>More wire in an opening than goes through without force.</summary>
internal sealed class RouteOverfull : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "route/overfull",
        Severity.Warning,
        Title: "A pass-through or loom is filled too far",
        Why: """
            Wires pulled through a full opening scrape each other bare, and inside it they cannot give off their heat. Two fifths of the
            opening filled is what careful installers allow. Open a second way, or a larger one.
            """,
        new Basis.Practice(),
        Bad: """
            paths:
              firewall: { length: 8 ft, passes: grommet, opening: 14 mm } #! route/overfull
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              inverter: { is: inverter, power: 400 W }
              compressor: { is: motor, current: 40 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, along: [firewall], fuse: { rating: 60 A, at: 8 in } }
              P2: { from: battery.+, to: compressor.+, wire: 4 AWG red, along: [firewall], fuse: { rating: 60 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 4 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """,
        Good: """
            paths:
              firewall: { length: 8 ft, passes: grommet, opening: 25 mm }
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              inverter: { is: inverter, power: 400 W }
              compressor: { is: motor, current: 40 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, along: [firewall], fuse: { rating: 60 A, at: 8 in } }
              P2: { from: battery.+, to: compressor.+, wire: 4 AWG red, along: [firewall], fuse: { rating: 60 A, at: 8 in } }
              G1: { from: inverter.-, to: bolt, wire: 4 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from path in install.Spec.Paths
        where path.Opening is not null
        let runs = install.Wiring.Runs.Where(r => r.Route.Any(a => a.Id == path.Id)).ToArray()
        let fill = Cables.Fill(runs, path.Opening!.Value.Value)
        where fill > Cables.MostFilled
        select Of(path, runs, fill);

    private Finding Of(VehiclePath path, WiredRun[] runs, Share fill)
    {
        var needed = new Meters(Math.Ceiling(Cables.Needs(runs).Value * 1000) / 1000);
        return Report(
            path.Opening!.Value.At,
            $"{RunText.List(runs.Select(r => r.Id))} fill the {path.Opening:opening} of {path.Id} to "
                + $"{PrintedValue.Of(fill, $"{Quantity.Digits(fill.Percent, 2)} %"):measured}; {Cables.MostFilled:limit} is the most",
            $"open it to {Quantity.PrintIn(needed, Meters.Units[0], 2)}, or lead some another way",
            null, [path.Id, .. runs.Select(r => r.Id)]);
    }
}
