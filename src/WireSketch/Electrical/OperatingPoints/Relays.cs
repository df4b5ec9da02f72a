using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>Which relays are pulled in: a contact follows its coil, and the coil follows the volts.</summary>
internal static class Relays
{
    /// <summary>Relays with both ends of the coil wired. Of others nobody knows, and their contacts go by the state alone.</summary>
    public static ImmutableArray<Relay> Driven(Wiring wiring) =>
        [.. wiring.Gear.OfType<Relay>().Where(r => wiring.IsWired(wiring.TerminalOf(r, "85")!) && wiring.IsWired(wiring.TerminalOf(r, "86")!))];

    /// <summary>Whether the volts across the coil pull the relay in.</summary>
    public static bool IsPulledIn(Wiring wiring, Relay relay, Func<Terminal, double?> volts) =>
        volts(wiring.TerminalOf(relay, "86")!) - volts(wiring.TerminalOf(relay, "85")!) is { } across && Math.Abs(across) > Assume.PullIn.Value.Value;

    /// <summary>Whether a link conducts in a state.</summary>
    /// <param name="link">The link.</param>
    /// <param name="state">The state.</param>
    /// <param name="driven">Relays whose coil is known.</param>
    /// <param name="pulledIn">Those of them that are pulled in.</param>
    public static bool IsClosed(InternalConnection link, SystemState state, IReadOnlyCollection<Relay> driven, IReadOnlyCollection<Relay> pulledIn) =>
        link.Gear is Relay relay && driven.Contains(relay) ? pulledIn.Contains(relay) == (link.Id == relay.Id) : link.ClosedIn.Contains(state);
}
