using System.Collections.Immutable;
using WireSketch.Electrical.TurnOn;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>What control wires lead to.</summary>
internal static class ControlWires
{
    /// <summary>Sources of a turn-on signal that a terminal is joined to; in one state, if it is named.</summary>
    public static ImmutableArray<Terminal> Sources(InstalledSystem install, Terminal terminal, SystemState? state = null) =>
        new TurnOnPaths(install.Wiring, install.Answers.Signals).Sources(terminal, state);

    /// <summary>The last run of the spec that lands on a terminal; null if none does.</summary>
    public static WiredRun? RunAt(Wiring wiring, Terminal terminal) =>
        wiring.ConductorsAt[terminal.Index].OrderByDescending(c => c.Index).Select(c => wiring.RunsById[c.RunId]).FirstOrDefault();

    /// <summary>Whether a device's supply is wired, so that it is meant to work.</summary>
    public static bool IsUsed(Wiring wiring, Gear gear) =>
        wiring.TerminalsOf(gear).Any(t => t.Role == TerminalRole.Supply && wiring.IsWired(t));

    /// <summary>The devices whose contacts a coil moves, each with its coil.</summary>
    public static IEnumerable<(Gear Gear, ContactCoil Coil)> Coils(Wiring wiring) =>
        from gear in wiring.Gear
        let drive = gear.Joins.OfType<TerminalJoin>().Select(j => j.Drive).FirstOrDefault(d => d is not null)
        where drive is not null
        select (gear, new ContactCoil(wiring.At(gear, drive.Plus), wiring.At(gear, drive.Minus), drive.ClosesPulledIn));

    /// <summary>Something hangs on the contacts that its coil moves: what they switch never works without it.</summary>
    public static bool IsNeeded(Wiring wiring, Gear gear) =>
        gear.Joins.OfType<TerminalJoin>()
            .Where(j => j is { Drive: not null, Second: not null })
            .SelectMany(j => new[] { j.First, j.Second! })
            .Distinct()
            .Count(t => wiring.IsWired(wiring.At(gear, t))) > 1;

    /// <summary>
    /// The devices that something switches on and that do not sleep, such as a radio, each with the terminal by which that is done.
    /// </summary>
    public static IEnumerable<(Gear Gear, Terminal Accessory)> Switched(Wiring wiring) =>
        from gear in wiring.Gear
        from input in gear.TurnOnInputs
        where input.Sleep is null
        select (gear, wiring.At(gear, input.Terminal));

    /// <summary>Whether a device lacks a source because a control output stands where one should.</summary>
    public static bool StandForSupply(Wiring wiring, LoadPath load) =>
        wiring.NetOf[load.Plus.Index].Terminals.Any(t => t is { Role: TerminalRole.Control, Shape.Flow: TerminalFlow.Out });
}
