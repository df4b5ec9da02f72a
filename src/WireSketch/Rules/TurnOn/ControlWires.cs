using System.Collections.Immutable;
using WireSketch.Electrical.TurnOn;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>What control wires lead to.</summary>
internal static class ControlWires
{
    /// <summary>Sources of a turn-on signal that a terminal is joined to; in one state, if it is named.</summary>
    public static ImmutableArray<Terminal> Sources(Install install, Terminal terminal, SystemState? state = null) => new TurnOnPaths(install.Wiring, install.Answers.Signals).Sources(terminal, state);

    /// <summary>The last run of the spec that lands on a terminal; null if none does.</summary>
    public static WiredRun? RunAt(Wiring wiring, Terminal terminal) => wiring.ConductorsAt[terminal.Index].OrderByDescending(c => c.Index).Select(c => wiring.RunsById[c.RunId]).FirstOrDefault();

    /// <summary>Whether a device's supply is wired, so that it is meant to work.</summary>
    public static bool IsUsed(Wiring wiring, Gear gear) => wiring.TerminalsOf(gear).Any(t => t.Role == TerminalRole.Supply && wiring.IsWired(t));
}
