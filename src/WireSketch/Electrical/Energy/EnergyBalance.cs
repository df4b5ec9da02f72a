using System.Collections.Immutable;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.Energy;

/// <summary>Alternator against demand, reserve with the engine off, and days until a battery is too flat to start.</summary>
internal sealed class EnergyBalance(Wiring wiring, ImmutableArray<StateResult> states)
{
    /// <summary>What may be taken from a battery, over its capacity.</summary>
    public static Assumption<Share> UsableOf(BatterySource b) =>
        b.Chemistry?.Value == Chemistry.Lithium ? Assume.UsableLithium : Assume.Usable;

    public static double Usable(BatterySource b) => UsableOf(b).Value.Value;

    public static AmpHours CapacityOf(BatterySource b) => b.Capacity?.Value ?? Assume.Capacity.Value;

    public EnergyResult Solve(ImmutableArray<ControlLoad> controls)
    {
        var vehicle = wiring.Spec.Job.Vehicle;
        var alternator = wiring.Sources.Select(s => s.Source).OfType<AlternatorSource>().FirstOrDefault();
        var atSpeed = alternator?.Output?.Value ?? vehicle.Alternator?.Value;
        var atIdle = alternator?.Idle?.Value ?? vehicle.IdleOutput?.Value ?? (atSpeed is { } s ? s * Assume.IdleOutput.Value.Value : null);
        var others = new Amps(wiring.Sources.Select(s => s.Source)
            .OfType<ChargerSource>()
            .Sum(g => (g.Current?.Value.Value ?? 0) * ShareOfTime(g)));
        var usable = wiring.Sources.Select(s => s.Source).OfType<BatterySource>().Sum(b => CapacityOf(b).Value * Usable(b));
        return new(
            atSpeed + others,
            atIdle + others,
            Defaults.BaseLoad(wiring),
            Sum(SystemState.Music, average: true),
            Sum(SystemState.FullOutput, average: false),
            Sum(SystemState.Standby, average: true) + OfVehicle(SystemState.Standby),
            new(usable),
            Emptied(SystemState.EngineOff),
            Emptied(SystemState.Standby),
            controls);
    }

    private StateResult StateOf(SystemState state) => states.First(s => s.State == state);

    public static double ShareOfTime(ChargerSource charger) => ShareOfTime(charger.Duty, charger.Hours);

    /// <summary>Duty times hours of the day; all of the time where nobody says.</summary>
    public static double ShareOfTime(Written<Share>? duty, Written<Seconds>? hours) =>
        (duty?.Value.Value ?? 1) * (hours is { } h ? Math.Min(1, h.Value.Value / 86400) : 1);

    private Amps Sum(SystemState state, bool average) =>
        new(StateOf(state).Loads.Sum(l => l.Amps.Value * (average ? LoadModels.ShareOfTime(l.Path.Input.Takes) : 1)));

    /// <summary>What the parked vehicle itself takes of its battery.</summary>
    private Amps OfVehicle(SystemState state) =>
        state == SystemState.Standby && wiring.Starter is not null ? Defaults.RestCurrent(wiring) : new Amps(0);

    /// <summary>
    /// The first batteries to give up; each group of joined batteries has its own loads. What the vehicle's own wiring feeds hangs on the
    /// first battery.
    /// </summary>
    private Discharge? Emptied(SystemState state)
    {
        var group = Groups(state);
        var first = wiring.Starter is { } starter ? group[starter.Plus.Index] : -1;
        var drawn = StateOf(state).Loads
            .Select(l =>
                (Group: group[FedFrom(l.Path).Index], Of: l.Path.Gear.Id, Amps: l.Amps * LoadModels.ShareOfTime(l.Path.Input.Takes)))
            .Append((Group: first, Of: "the vehicle itself", Amps: OfVehicle(state)))

            // Solar and shore give their daily average back, in whichever group they charge.
            .Concat(wiring.Sources.Where(s => s.Source is ChargerSource)
                .Select(s =>
                    (
                        Group: group[s.Plus.Index],
                        Of: s.Gear.Id,
                        Amps: -(((ChargerSource)s.Source).Current?.Value ?? new Amps(0)) * ShareOfTime((ChargerSource)s.Source))))
            .Where(d => d.Amps.Value != 0)
            .ToLookup(d => d.Group, d => (d.Of, d.Amps));
        return wiring.Sources.Where(s => s.Source is BatterySource).GroupBy(b => group[b.Plus.Index])
            .Select(g =>
                new Discharge(
                    [.. g],
                    new(g.Select(b => (BatterySource)b.Source).Sum(b => CapacityOf(b).Value * Usable(b))),
                    [.. drawn[g.Key]]))
            // Less than a microampere is rounding, not a drain.
            .Where(d => d.Current.Value > 1e-6).OrderBy(d => d.Lasts.Value).FirstOrDefault();
    }

    /// <summary>Where a load's current comes from: what the vehicle's own circuits feed comes from its first battery.</summary>
    private Terminal FedFrom(LoadPath path) =>
        (path.IsTakenAsWired || (path.Source is { } source && wiring.SourceAt(source)?.Source is VehicleCircuit))
            && wiring.Starter is { } starter
            ? starter.Plus
            : path.Plus;

    /// <summary>
    /// The group of terminals that each belongs to, joined by conductors and by what is closed in a state; the body joins nothing.
    /// </summary>
    private int[] Groups(SystemState state)
    {
        var driven = Relays.Driven(wiring);
        var pulledIn = driven.Where(r => Relays.IsPulledIn(r, t => StateOf(state).Volts[t.Index]?.Value)).ToArray();
        var joined = new UnionFind(wiring.Terminals.Length);
        var inside = wiring.Links.Where(l => l.Kind != ConnectionKind.Chassis && Relays.IsClosed(l, state, driven, pulledIn))
            .Select(l => (l.A, l.B));
        foreach (var (a, b) in wiring.Conductors.Select(c => (c.From, c.To))
            .Concat(inside)
            .Where(e => e.Item1 != wiring.Body && e.Item2 != wiring.Body))
        {
            joined.Join(a.Index, b.Index);
        }

        return [.. wiring.Terminals.Select(t => joined.Root(t.Index))];
    }
}
