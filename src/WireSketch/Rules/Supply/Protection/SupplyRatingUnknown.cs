using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A fuse in use of which nobody says how large it is.</summary>
internal sealed class SupplyRatingUnknown : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/rating-unknown",
        Severity.Warning,
        Title: "A fuse in use has no rating",
        Why: """
            Without its rating nothing can tell whether the fuse protects the wire behind it or carries the load, and the parts list cannot
            name it. Write the rating, or auto on a run to let it be chosen.
            """,
        new Basis.Reasoning("protection is judged by the rating"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 15 A } } #! supply/rating-unknown
              pump: { is: pump, current: 10 A }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 8 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: pump.+, wire: 12 AWG red, length: 8 ft }
              P3: { from: fuses.out.2, to: fridge.+, wire: 8 AWG red, length: 8 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: fridge.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 15 A, 2: 10 A } }
              pump: { is: pump, current: 10 A }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 8 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: pump.+, wire: 12 AWG red, length: 8 ft }
              P3: { from: fuses.out.2, to: fridge.+, wire: 8 AWG red, length: 8 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: fridge.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        where link is { Protects: true, Rating: null, Gear.InVehicle: false } && install.Wiring.IsWired(link.B) && !IsChosen(install, link)
        select Report(
            link.At ?? link.Gear!.Name.At, $"{RunText.Named(link)} is in use and has no rating",
            link.Join is { FuseMayStandAtRun: true }
                ? $"add it to fuses: of {link.Gear!.Id}, such as fuses: {{ {link.Id[(link.Id.LastIndexOf('.') + 1)..]}: 15 A }}"
                : "add rating: with its rated current, or auto",
            RunText.Subject(link), link.Id);

    /// <summary>Written as <c>auto</c>: it is being chosen.</summary>
    private static bool IsChosen(InstalledSystem install, InternalConnection link) =>
        install.Wiring.ConductorsAt[link.B.Index].Any(c => RunText.Of(install, c).Run.Protection is { Auto: true });
}
