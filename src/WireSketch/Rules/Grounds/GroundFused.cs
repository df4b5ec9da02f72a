using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>A fuse or breaker in the ground.</summary>
internal sealed class GroundFused : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "ground/fused",
        Severity.Warning,
        Title: "A fuse stands in the ground",
        Why: """
            When a fuse in the ground opens, the device stays live and looks for another way back: the shield of its signal cable. A fuse in
            the supply protects the wire; one in the ground protects nothing.
            """,
        new Basis.Published(
            $"33 CFR 183.455(a) asks for protection of ungrounded conductors; that the return stays whole is common practice, no "
                + $"published source"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in, fuse: { rating: 15 A, at: 4 in } } #! ground/fused
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

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        where link.Protects
        let loads = install.Wiring.Loads.Where(l => l.Input.Takes is not CoilDraw && l.Return.Any(s => s.Link?.Index == link.Index))
            .Select(l => l.Gear.Id)
            .ToArray()
        let run = install.Wiring.Runs.FirstOrDefault(r =>
            r.Kind == RunKind.Ground
                && r.Holder is not null
                && ReferenceEquals(r.Holder, link.Gear)
                && !r.From.Concat(r.To).Any(e => TerminalRoles.HasCoil(e.Gear)))
        where loads.Length > 0 || run is not null
        select Report(
            link.At ?? link.Gear!.Name.At,
            $"{RunText.Named(link)} stands in {(loads.Length > 0 ? $"the return of {RunText.List(loads)}" : $"the ground {run!.Id}")}",
            "take it out of the ground; put it in the supply, near the source", RunText.Subject(link), loads.FirstOrDefault() ?? run!.Id);
}
