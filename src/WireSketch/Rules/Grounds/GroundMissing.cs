using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>A powered device or source with no way back for its current.</summary>
internal sealed class GroundMissing : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "ground/missing",
        Severity.Error,
        Title: "A device has no ground",
        Why: """
            Without a return no current flows where it should; it looks for another way, often through the shield of a signal cable, which
            melts. A case that stands on the body is grounded only where the spec says so, and so is a second battery.
            """,
        new Basis.Reasoning("no way leads from the device's minus to the body or to a source's minus"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W } #! ground/missing
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 8 ft, fuse: { rating: 15 A, at: 8 in } }
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

    public override IEnumerable<Finding> Check(InstalledSystem install) => [.. Loads(install), .. Sources(install), .. Isolators(install)];

    private IEnumerable<Finding> Loads(InstalledSystem install) =>
        from load in install.Wiring.Loads
        where load is { HasReturn: false, ReturnsThroughShield: false }
            && (install.Wiring.IsWired(load.Plus) || install.Wiring.IsWired(load.Minus))
            && !ReversedSupplies.Is(install, load)
        select Of(install, load.Gear, load.Minus, "a battery's minus", load.Input.Takes is CoilDraw
            ? $"add a run from {load.Minus} to a ground, or to the device that switches it to ground"
            : Bolted(load.Minus));

    /// <summary>
    /// Sources and capacitors: all but the first battery, whose lead is the vehicle's own, and alternators, which stand on the engine.
    /// </summary>
    private IEnumerable<Finding> Sources(InstalledSystem install)
    {
        var wiring = install.Wiring;
        return from gear in install.Spec.Gear
               where !ReferenceEquals(gear, install.Starter)
               from poles in Poles(gear)
               let plus = wiring.At(gear, poles.Plus)
               let minus = wiring.At(gear, poles.Minus)
               where wiring.IsWired(plus)
                   && !(gear.InVehicle && !wiring.IsWired(minus))
                   && (!GroundPaths.Reaches(wiring, minus) || !MeetsFellows(wiring, minus, plus))
               select Of(install, gear, minus, "the minus of the sources it is joined with", Bolted(minus));
    }

    private static IEnumerable<(TerminalShape Plus, TerminalShape Minus)> Poles(Gear gear) =>
        TerminalRoles.HoldsCharge(gear)
            ? [(gear.Terminals.First(t => t.Role == TerminalRole.Supply), gear.Terminals.First(t => t.Role == TerminalRole.Ground))]
            : gear.Sources.Where(s => s is { Minus: not null } and not AlternatorSource).Select(s => (s.Plus, s.Minus!));

    /// <summary>
    /// A source that shares its supply wires with others shares their ground as well: otherwise neither charges nor helps the other.
    /// </summary>
    private static bool MeetsFellows(Wiring wiring, Terminal minus, Terminal plus)
    {
        var own = wiring.Feeds.Where(f => f.Source.Index == plus.Index)
            .SelectMany(f => f.Conductors)
            .Select(c => c.Conductor.Index)
            .ToHashSet();
        var island = GroundPaths.Island(wiring, minus);
        return wiring.Feeds.Where(f => f.Source.Index != plus.Index && f.Conductors.Any(c => own.Contains(c.Conductor.Index)))
            .All(f =>
                wiring.SourceAt(f.Source)?.Minus is not { } other
                    || island.Contains(other.Index)
                    || !GroundPaths.Reaches(wiring, other));
    }

    /// <summary>Relays and sensing devices between batteries pull in against their own minus; diodes need none.</summary>
    private IEnumerable<Finding> Isolators(InstalledSystem install) =>
        from isolator in install.Wiring.Links
        where isolator is { Join.Batteries.PullsInAgainst: not null, Gear.InVehicle: false }
        let minus = install.Wiring.At(isolator.Gear!, isolator.Join!.Batteries!.PullsInAgainst!)
        where (install.Wiring.IsWired(isolator.A) || install.Wiring.IsWired(isolator.B)) && !GroundPaths.Reaches(install.Wiring, minus)
        select Of(install, isolator.Gear!, minus, "a battery's minus", Bolted(minus));

    private static string Bolted(Terminal minus) =>
        $"add a run from {minus} to a chassis point on bare metal, as thick as its supply, such as G1: {{ from: {minus}, to: "
            + $"ground-bolt, wire: 4 AWG black, length: 14 in }}";

    private Finding Of(InstalledSystem install, Gear gear, Terminal minus, string home, string help) => Report(
        gear.Name.At,
        install.Wiring.IsWired(minus)
            ? FindingText.Of($"{minus} is wired, but that leads neither to the body nor to {home}")
            : $"nothing is wired to {minus}: {gear.Id} has no way back for its current",
        help,
        gear.Id, minus.Id);
}
