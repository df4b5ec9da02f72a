using System.Collections.Immutable;
using WireSketch.Electrical.TurnOn;
using WireSketch.Language;
using WireSketch.Language.Kinds;
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

    /// <summary>Something hangs on its contacts: what they switch never works.</summary>
    public static bool IsNeeded(Wiring wiring, Relay relay) =>
        ((string[])["30", "87", "87a"]).Count(t => wiring.IsWired(wiring.TerminalOf(relay, t)!)) > 1;

    /// <summary>Whether a device lacks a source because a control output stands where one should.</summary>
    public static bool StandForSupply(Wiring wiring, LoadPath load) =>
        wiring.NetOf[load.Plus.Index].Terminals.Any(t => t is { Role: TerminalRole.Control, Shape.Flow: TerminalFlow.Out });
}
