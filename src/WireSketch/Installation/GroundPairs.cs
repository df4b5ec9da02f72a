using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Installation;

/// <summary>Devices joined by a signal cable and grounded at different points.</summary>
internal static class GroundPairs
{
    /// <summary>From here on it is worth knowing (common practice, no published source).</summary>
    public static readonly Volts Limit = new(0.010);

    /// <summary>Devices of which one feeds the other at line level, grounded at different points.</summary>
    public static IEnumerable<(LoadPath From, LoadPath To)> Of(InstalledSystem install)
    {
        var loads = install.Wiring.Loads.Where(l => l is { HasReturn: true, Return.IsEmpty: false })
            .ToDictionary(l => l.Gear.Id, StringComparer.Ordinal);
        return from signal in install.Answers.Signals
               where signal is { Level: SignalLevel.Line, Chain.IsEmpty: false } && signal.Chain[^1].Id != signal.Gear.Id
               let pair = (From: loads.GetValueOrDefault(signal.Chain[^1].Id), To: loads.GetValueOrDefault(signal.Gear.Id))
               where pair.From is not null
                   && pair.To is not null
                   && GroundPaths.PointOf(pair.From) is { } a
                   && GroundPaths.PointOf(pair.To) is { } b
                   && a.Id != b.Id
               select (pair.From, pair.To);
    }

    public static Volts Between(StateResult state, LoadPath a, LoadPath b) =>
        state.Volts[a.Minus.Index] is { } va && state.Volts[b.Minus.Index] is { } vb ? new(Math.Abs(va.Value - vb.Value)) : new(0);
}
