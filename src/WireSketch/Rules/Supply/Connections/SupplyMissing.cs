using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>A powered device that no source feeds.</summary>
internal sealed class SupplyMissing : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/missing",
        Severity.Error,
        Title: "A device has no supply",
        Why: $"A device that is wired but not fed does not work. What was in the vehicle before is taken as supplied, unless a run says "
            + $"otherwise.",
        new Basis.Reasoning("no way leads from a source to the device's supply terminal"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 15 A, 2: 15 A } }
              pump: { is: pump, current: 10 A }
              fridge: { is: fridge, power: 60 W } #! supply/missing
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 8 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: pump.+, wire: 12 AWG red, length: 8 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 15 A, 2: 15 A } }
              pump: { is: pump, current: 10 A }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 8 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: pump.+, wire: 12 AWG red, length: 8 ft }
              P3: { from: fuses.out.2, to: fridge.+, wire: 12 AWG red, length: 8 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    /// <summary>Gear with no run at all is another matter: it is told as never used.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) => [.. Loads(install), .. Isolators(install)];

    private IEnumerable<Finding> Loads(InstalledSystem install) =>
        from load in install.Wiring.Loads
        where load is { Source: null, IsTakenAsWired: false, Input.Takes: not CoilDraw }
            && install.Wiring.IsWired(load.Gear)
            && !ReversedSupplies.Is(install, load)
            && !ControlWires.StandForSupply(install.Wiring, load)
        select Of(install.Wiring, load);

    /// <summary>Isolators with a wire on one side only: they join nothing, and the battery behind them is never charged.</summary>
    private IEnumerable<Finding> Isolators(InstalledSystem install) =>
        from isolator in install.Wiring.Links
        where isolator.Join is { Batteries: not null } && install.Wiring.IsWired(isolator.A) != install.Wiring.IsWired(isolator.B)
        let bare = install.Wiring.IsWired(isolator.A) ? isolator.B : isolator.A
        let gear = isolator.Gear!
        select Report(
            gear.Name.At, $"nothing is wired to {bare}: {gear.Id} joins no batteries",
            $"add a run from {bare} to the battery on that side, fused near that battery", gear.Id, bare.Id);

    private Finding Of(Wiring wiring, LoadPath load)
    {
        var bare = !wiring.IsWired(load.Minus) && !load.Gear.InVehicle;
        return Report(
            load.Gear.Name.At,
            wiring.IsWired(load.Plus) ? FindingText.Of($"{load.Gear.Id} is wired at {load.Plus}, but that leads to no source")
                : $"nothing is wired to {load.Plus}{(bare ? $" or {load.Minus}" : "")}: {load.Gear.Id} is not fed",
            $"add a run to {load.Plus} from a fuse near the "
                + $"battery{(bare ? $", and one from {load.Minus} to bare metal of the body" : "")}; or write origin: existing if it is "
                + $"fed already",
            load.Gear.Id, load.Plus.Id);
    }
}
