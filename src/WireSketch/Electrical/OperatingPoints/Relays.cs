using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>Which contacts are moved: a contact follows its coil, and the coil follows the volts.</summary>
internal static class Relays
{
    /// <summary>Coils with both ends wired, each once. Of others nobody knows, and their contacts go by the state alone.</summary>
    public static ImmutableArray<ContactCoil> Driven(Wiring wiring) =>
        [
            .. wiring.Links.Select(l => l.Coil)
                .OfType<ContactCoil>()
                .Where(c => wiring.IsWired(c.Minus) && wiring.IsWired(c.Plus))
                .DistinctBy(c => (c.Plus.Index, c.Minus.Index))
        ];

    /// <summary>Whether the volts across a coil pull it in.</summary>
    public static bool IsPulledIn(ContactCoil coil, Func<Terminal, double?> volts) =>
        volts(coil.Plus) - volts(coil.Minus) is { } across && Math.Abs(across) > Assume.PullIn.Value.Value;

    /// <summary>Whether a link conducts in a state.</summary>
    /// <param name="link">The link.</param>
    /// <param name="state">The state.</param>
    /// <param name="driven">Coils with both ends wired.</param>
    /// <param name="pulledIn">Those of them that are pulled in.</param>
    public static bool IsClosed(
        InternalConnection link,
        SystemState state,
        IReadOnlyCollection<ContactCoil> driven,
        IReadOnlyCollection<ContactCoil> pulledIn) =>
        link.Coil is { } coil && driven.Any(d => IsSame(d, coil))
            ? pulledIn.Any(p => IsSame(p, coil)) == coil.ClosesPulledIn
            : link.ClosedIn.Contains(state);

    private static bool IsSame(ContactCoil a, ContactCoil b) => a.Plus.Index == b.Plus.Index && a.Minus.Index == b.Minus.Index;
}
