using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Loads wired the wrong way round: plus and minus exchanged.</summary>
internal static class ReversedSupplies
{
    /// <summary>Whether a load is wired the wrong way round: then what it lacks follows from that.</summary>
    public static bool Is(InstalledSystem install, LoadPath load) =>
        MinusAtPlus(install.Wiring, load) is not null || install.IsSupplied(load.Minus);

    /// <summary>
    /// The minus of a source that wires bring to the plus of a load which no source feeds, and the run that lands on that minus; null if
    /// none does.
    /// </summary>
    public static (WiredRun Run, Terminal Source)? MinusAtPlus(Wiring wiring, LoadPath load)
    {
        if (load.Source is not null)
        {
            return null;
        }

        var step = wiring.Graph.From(load.Plus).Over(Follow.WithoutShields, Pass.WithoutVehicle).EndingAt(t => t == wiring.Body).Steps()
            .FirstOrDefault(s => s.Conductor is not null && TerminalRoles.IsSourceMinus(s.To));
        return step.Conductor is { } conductor ? (wiring.RunsById[conductor.RunId], step.To) : null;
    }

    /// <summary>Minus of a load; a source's minus is a dead short and told as one.</summary>
    public static bool IsMinus(Terminal t) =>
        t.Role == TerminalRole.Ground
            && t.Shape.Name == "-"
            && t.Gear is { } gear
            && (gear.PowerInputs.Any(p => p.Minus == t.Shape) || gear.Cautions.Contains(GearCaution.HoldsCharge));
}
