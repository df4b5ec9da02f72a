using System.Collections.Immutable;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Energy;

/// <summary>Alternator against demand, reserve with the engine off, and days until a battery is too flat to start.</summary>
internal sealed class EnergyBalance(Wiring wiring, ImmutableArray<StateResult> states)
{
    /// <summary>What may be taken from a battery: half, of lithium four fifths (common practice, no published source).</summary>
    public static double Usable(Battery b) => b.Chemistry?.Value == "lithium" ? 0.8 : 0.5;

    /// <summary>Capacity where nobody wrote it (common practice, no published source).</summary>
    public static AmpHours CapacityOf(Battery b) => b.Capacity?.Value ?? new AmpHours(60);

    public EnergyResult Solve(ImmutableArray<ControlLoad> controls)
    {
        var vehicle = wiring.Spec.Job.Vehicle;
        var alternator = wiring.Spec.Gear.OfType<Alternator>().FirstOrDefault();
        var atSpeed = alternator?.Output?.Value ?? vehicle.Alternator?.Value;
        var atIdle = alternator?.Idle?.Value ?? vehicle.IdleOutput?.Value ?? (atSpeed is { } s ? s / 2 : null);
        var others = new Amps(wiring.Spec.Gear.OfType<GeneralSource>().Sum(g => (g.Current?.Value.Value ?? 0) * ShareOfTime(g)));
        var usable = wiring.Spec.Gear.OfType<Battery>().Sum(b => CapacityOf(b).Value * Usable(b));
        return new(
            atSpeed + others, atIdle + others, vehicle.BaseLoad?.Value ?? new Amps(25), Sum(SystemState.Music, average: true), Sum(SystemState.FullOutput, average: false),
            Sum(SystemState.Standby, average: true) + OfVehicle(SystemState.Standby), new(usable), Emptied(SystemState.EngineOff), Emptied(SystemState.Standby), controls);
    }

    public static double ShareOfTime(GeneralSource g) => (g.Duty?.Value.Value ?? 1) * (g.Hours is { } h ? Math.Min(1, h.Value.Value / 86400) : 1);

    private Amps Sum(SystemState state, bool average) => new(states[(int)state].Loads.Sum(l => l.Amps.Value * (average ? LoadModels.ShareOfTime(l.Path.Gear) : 1)));

    /// <summary>What the parked vehicle itself takes of its battery.</summary>
    private Amps OfVehicle(SystemState state) => state == SystemState.Standby && wiring.Gear.Any(g => g is Battery) ? Defaults.RestCurrent(wiring) : new Amps(0);

    /// <summary>The first batteries to give up; each group of joined batteries has its own loads. What the vehicle's own wiring feeds hangs on the first battery.</summary>
    private Discharge? Emptied(SystemState state)
    {
        var group = Groups(state);
        var first = wiring.Gear.OfType<Battery>().Select(b => group[wiring.TerminalOf(b, "+")!.Index]).FirstOrDefault(-1);
        var drawn = states[(int)state].Loads
            .Select(l => (Group: group[FedFrom(l.Path).Index], Of: l.Path.Gear.Id, Amps: l.Amps * LoadModels.ShareOfTime(l.Path.Gear)))
            .Append((Group: first, Of: "the vehicle itself", Amps: OfVehicle(state)))

            // Solar and shore give their daily average back, in whichever group they charge.
            .Concat(wiring.Gear.OfType<GeneralSource>().Select(s => (Group: group[wiring.TerminalOf(s, "+")!.Index], Of: s.Id, Amps: -(s.Current?.Value ?? new Amps(0)) * ShareOfTime(s))))
            .Where(d => d.Amps.Value != 0)
            .ToLookup(d => d.Group, d => (d.Of, d.Amps));
        return wiring.Gear.OfType<Battery>().GroupBy(b => group[wiring.TerminalOf(b, "+")!.Index])
            .Select(g => new Discharge([.. g], new(g.Sum(b => CapacityOf(b).Value * Usable(b))), [.. drawn[g.Key]]))
            // Less than a microampere is rounding, not a drain.
            .Where(d => d.Current.Value > 1e-6).OrderBy(d => d.Lasts.Value).FirstOrDefault();
    }

    /// <summary>Where a load's current comes from: what the vehicle's own circuits feed comes from its first battery.</summary>
    private Terminal FedFrom(LoadPath path) =>
        (path.IsTakenAsWired || path.Source?.Gear is TapPoint or IgnitionSource) && wiring.Starter is { } first ? wiring.TerminalOf(first, "+")! : path.Plus;

    /// <summary>The group of terminals that each belongs to, joined by conductors and by what is closed in a state; the body joins nothing.</summary>
    private int[] Groups(SystemState state)
    {
        var word = States.Words[(int)state];
        var driven = Relays.Driven(wiring);
        var pulledIn = driven.Where(r => Relays.IsPulledIn(wiring, r, t => states[(int)state].Volts[t.Index]?.Value)).ToArray();
        var joined = new UnionFind(wiring.Terminals.Length);
        var inside = wiring.Links.Where(l => l.Kind != ConnectionKind.Chassis && Relays.IsClosed(l, word, driven, pulledIn)).Select(l => (l.A, l.B));
        foreach (var (a, b) in wiring.Conductors.Select(c => (c.From, c.To)).Concat(inside).Where(e => e.Item1 != wiring.Body && e.Item2 != wiring.Body))
        {
            joined.Join(a.Index, b.Index);
        }

        return [.. wiring.Terminals.Select(t => joined.Root(t.Index))];
    }
}
