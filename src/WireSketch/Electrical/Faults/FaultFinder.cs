using System.Collections.Immutable;
using WireSketch.Electrical.Conductors;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Electrical.Solver;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.Faults;

/// <summary>
/// Dead shorts to the body at both ends of every conductor that a source can feed. What a device must break is reckoned with cold wire and
/// the alternators at their limit; what must open it, with warm wire and the engine stopped.
/// </summary>
internal sealed class FaultFinder
{
    /// <summary>The adiabatic equation holds for about so long (IEC 60364-5-54).</summary>
    private const double AdiabaticSeconds = 5;

    /// <summary>Fuses of one class are selective from this ratio of ratings on (IEC 60269; from memory).</summary>
    private const double SelectiveRatio = 1.6;

    private readonly Wiring wiring;
    private readonly FaultNetwork strong;
    private readonly FaultNetwork weak;
    private readonly int[] conductorBranch;
    private readonly int[] linkBranch;

    public FaultFinder(Wiring wiring, IReadOnlyList<Celsius> warm)
    {
        this.wiring = wiring;
        var cold = wiring.Conductors.Select(_ => new Celsius(20)).ToArray();
        (strong, conductorBranch, linkBranch) = Build(cold, alternators: true);
        (weak, _, _) = Build(warm, alternators: false);
    }

    /// <summary>In the order of the conductors; one for each device that must open, where several sources feed a conductor.</summary>
    public ImmutableArray<FaultAnswer> Find()
    {
        var fed = wiring.Feeds.SelectMany(f => f.Conductors).Where(f => conductorBranch[f.Conductor.Index] >= 0 && f.Conductor.Kind != RunKind.Ground);
        return [.. fed.DistinctBy(f => (f.Conductor.Index, Device: f.Protections.LastOrDefault()?.Index ?? -1, f.Near.Index)).OrderBy(f => f.Conductor.Index).Select(Tell)];
    }

    private FaultAnswer Tell(FedConductor fed)
    {
        var conductor = fed.Conductor;
        var device = fed.Protections.LastOrDefault();
        var near = new Amps(strong.Short(fed.Near.Index));
        var toBreak = device is null ? 0 : Math.Max(ThroughWhenShorted(strong, device, device.A), ThroughWhenShorted(strong, device, device.B));
        var far = new Amps(weak.Short(fed.Far.Index));
        var through = new Amps(device is null ? 0 : Math.Abs(weak.Through(linkBranch[device.Index])));
        var metal = ConductorFacts.MetalOf(conductor);
        var insulation = conductor.Wire.Insulation.Value;

        // Limits of short circuits: 160 C for insulation up to 105 C as for PVC, 250 C above as for cross-linked (IEC 60364-5-54).
        var withstand = metal.Withstand(conductor.Wire.Size.Area, new(Math.Min(insulation, 200)), new(insulation <= 105 ? 160 : 250));
        Seconds? opens = null;
        Amps? breaking = device?.Breaking;
        if (device?.Rating is { Value: > 0 } rating)
        {
            var style = device.Style ?? (device.Kind == LinkKind.Breaker ? "breaker" : FuseTable.StyleFor(rating, new(toBreak)) ?? "");
            opens = FuseTable.OpensWithin(style, through / rating);
            breaking ??= FuseTable.BreakingOf(style);
        }

        double? passes = opens is { Value: <= AdiabaticSeconds } t ? through.Value * through.Value * t.Value : null;
        return new(conductor, near, far, device, through, new(toBreak), opens, breaking, passes, withstand, Upstream(fed, device));
    }

    private static Link? Upstream(FedConductor fed, Link? device) =>
        device?.Rating is not { } rating ? null
            : fed.Protections.SkipLast(1).LastOrDefault(p => p.Rating is { } r && r.Value < SelectiveRatio * rating.Value);

    private double ThroughWhenShorted(FaultNetwork network, Link device, Terminal at)
    {
        network.Short(at.Index);
        return Math.Abs(network.Through(linkBranch[device.Index]));
    }

    private (FaultNetwork Network, int[] Conductors, int[] Links) Build(IReadOnlyList<Celsius> temperatures, bool alternators)
    {
        var supply = new SupplyCircuit(wiring, SystemState.EngineOff, temperatures);
        var circuit = supply.Circuit;
        var linear = new DcCircuit(circuit.Nodes);
        var batteries = wiring.Gear.OfType<Battery>().Select(b => wiring.TerminalOf(b, "+")!).ToArray();
        foreach (var b in circuit.Branches)
        {
            _ = b.Kind switch
            {
                BranchKind.Resistor => linear.Resistor(b.A, b.B, b.Ohms),
                BranchKind.Battery or BranchKind.Source => linear.Source(b.A, b.B, b.Value, b.Ohms),
                BranchKind.Diode => linear.Resistor(b.A, b.B, Blocks(b, batteries, alternators) ? 1e9 : b.Ohms),
                BranchKind.Regulated => linear.Source(b.A, b.B, b.Value, Math.Max(b.Ohms, double.IsFinite(b.Limit) && b.Limit > 0 ? b.Value / b.Limit : b.Ohms)),
                _ => linear.Current(b.A, b.B, 0),
            };
        }

        foreach (var gear in wiring.Gear.Where(_ => alternators))
        {
            if (gear is Alternator a && Defaults.Output(wiring, a, SystemState.FullOutput) is { } output)
            {
                linear.Current(wiring.TerminalOf(a, "-")!.Index, wiring.TerminalOf(a, "+")!.Index, output.Value);
            }
        }

        if (alternators && batteries.Length > 0 && !wiring.Gear.Any(g => g is Alternator) && Defaults.Output(wiring, null, SystemState.FullOutput) is { } own)
        {
            linear.Current(0, batteries[0].Index, own.Value);
        }

        return (new(linear), supply.ConductorBranch, supply.LinkBranch);
    }

    /// <summary>Toward a battery of its own a diode is left out where the current must not be overrated.</summary>
    private bool Blocks(Branch diode, Terminal[] batteries, bool alternators) =>
        !alternators && batteries.Any(b => wiring.NetOf[b.Index] == wiring.NetOf[diode.B]);
}
