using WireSketch.Topology;

namespace WireSketch.Electrical.Readings;

/// <summary>
/// Looks for the one bad contact that explains what a meter showed: the run whose added resistance leaves the least squared error over all
/// readings of one state. An added resistance R in a run that carries the current I lowers everything behind it by R·I; the small change of
/// the current itself is left out.
/// </summary>
internal sealed class ResistanceFinder(Wiring wiring, StateResult state)
{
    /// <summary>Of the squared error, as much may stay unexplained.</summary>
    private const double Unexplained = 0.1;

    /// <summary>Runs that explain it this much worse than the best are out.</summary>
    private const double Tie = 0.02;

    /// <summary>A run without current cannot lose volts.</summary>
    private const double LeastAmps = 0.05;

    /// <summary>The likeliest cause; null if no single one explains the readings.</summary>
    public AddedResistance? Find(IReadOnlyCollection<VoltReading> readings)
    {
        var all = readings.Sum(r => r.Off * r.Off);
        if (all <= 0)
        {
            return null;
        }

        var fits = Candidates(readings).Select(c => (c.RunId, Fit: FitOf(c, readings))).Where(f => f.Fit is not null)
            .GroupBy(f => f.RunId, StringComparer.Ordinal)
            .Select(g => (Run: g.Key, Fit: g.Select(f => f.Fit!.Value).MinBy(f => f.Error)))
            .ToArray();
        if (fits.Length == 0)
        {
            return null;
        }

        var best = fits.MinBy(f => f.Fit.Error);
        if (best.Fit.Error > Unexplained * all)
        {
            return null;
        }

        return new([.. fits.Where(f => f.Fit.Error <= best.Fit.Error + (Tie * all)).Select(f => f.Run)], new(best.Fit.Ohms));
    }

    /// <summary>Conductors on the ways of the devices that were measured.</summary>
    private Conductor[] Candidates(IReadOnlyCollection<VoltReading> readings)
    {
        var devices = readings.SelectMany(r => new[] { r.Plus.Gear, r.Minus.Gear }).ToHashSet();
        var ways = wiring.Loads.Where(l => devices.Contains(l.Gear))
            .SelectMany(l => l.Supply.Concat(l.Return))
            .Select(s => s.Conductor)
            .OfType<Conductor>();
        return [.. ways.DistinctBy(c => c.Index).OrderBy(c => c.Index).Where(c => Math.Abs(state.Amps[c.Index].Value) > LeastAmps)];
    }

    private (double Ohms, double Error)? FitOf(Conductor conductor, IReadOnlyCollection<VoltReading> readings)
    {
        var amps = state.Amps[conductor.Index].Value;
        var behind = Behind(conductor, amps > 0 ? conductor.To : conductor.From);
        var ahead = behind is null ? Behind(conductor, amps > 0 ? conductor.From : conductor.To) : null;
        if (behind is null && ahead is null)
        {
            return null;
        }

        // What lies behind it on a supply falls; what lies ahead of it on a return rises.
        double Shift(Terminal t) =>
            behind?.Contains(t.Index) == true ? -Math.Abs(amps) : ahead?.Contains(t.Index) == true ? Math.Abs(amps) : 0;
        var rows = readings.Select(r => (Off: r.Off, Per: Shift(r.Plus) - Shift(r.Minus))).ToArray();
        var squares = rows.Sum(r => r.Per * r.Per);
        if (squares <= 0)
        {
            return null;
        }

        var ohms = rows.Sum(r => r.Per * r.Off) / squares;
        return ohms <= 0 ? null : (ohms, rows.Sum(r => (r.Off - (ohms * r.Per)) * (r.Off - (ohms * r.Per))));
    }

    /// <summary>
    /// Terminals that hang on one end once the conductor is cut; null if a source or the body is among them, for these hold their volts.
    /// </summary>
    private HashSet<int>? Behind(Conductor cut, Terminal end)
    {
        var behind = new HashSet<int>();
        foreach (var terminal in wiring.Graph.From(end).Over(c => c.Index != cut.Index, Pass.All).Terminals())
        {
            if (TerminalRoles.HoldsVolts(terminal))
            {
                return null;
            }

            behind.Add(terminal.Index);
        }

        return behind;
    }
}
