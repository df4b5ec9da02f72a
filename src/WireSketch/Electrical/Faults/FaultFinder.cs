using System.Collections.Immutable;
using WireSketch.Electrical.Conductors;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Electrical.Solver;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.Faults;

/// <summary>
/// Dead shorts to the body at both ends of every conductor that a source can feed. What a device must break is reckoned with cold wire, all
/// batteries, and alternators at their limit; what must open it, with warm wire and the one source alone: what the others add does not flow
/// through it, and they may be cut off already.
/// </summary>
internal sealed class FaultFinder
{
    /// <summary>The adiabatic equation holds for about so long (IEC 60364-5-54).</summary>
    public const double AdiabaticSeconds = 5;

    /// <summary>Fuses of one class are selective from this ratio of ratings on (IEC 60269; from memory).</summary>
    public const double SelectiveRatio = 1.6;

    private readonly Wiring wiring;
    private readonly SupplyCircuit warm;
    private readonly FaultNetwork all;
    private readonly FaultNetwork strong;
    private readonly int[] conductorBranch;
    private readonly int[] linkBranch;
    private readonly Dictionary<int, double> nearAmps = [];
    private readonly Dictionary<int, double> amountToBreak = [];

    public FaultFinder(Wiring wiring, IReadOnlyList<Celsius> temperatures)
    {
        this.wiring = wiring;
        warm = new(wiring, SystemState.FullOutput, temperatures);
        conductorBranch = warm.ConductorBranch;
        linkBranch = warm.LinkBranch;
        all = Linear(warm, null, alternators: false);
        strong = Linear(new(wiring, SystemState.FullOutput, [.. wiring.Conductors.Select(_ => new Celsius(20))]), null, alternators: true);
    }

    /// <summary>
    /// In the order of the conductors; one for each source and device that must open. What a source reaches without any device has one
    /// answer
    /// alone, without a device: others in the way of other sources do not help it. Chargers and alternators, which cannot give more than
    /// their limit, count where no battery feeds.
    /// </summary>
    public ImmutableArray<FaultResult> Find()
    {
        var fed = wiring.Feeds.SelectMany(feed => feed.Conductors.Select(f => (Feed: feed, Fed: f)))
            .Where(x => conductorBranch[x.Fed.Conductor.Index] >= 0 && x.Fed.Conductor.Kind != RunKind.Ground)
            .GroupBy(x => x.Fed.Conductor.Index).OrderBy(g => g.Key);
        var alone = wiring.Feeds.Select(f => f.Source.Index)
            .Distinct()
            .ToDictionary(i => i, i => new Lazy<FaultNetwork>(() => IsOnly(i) ? all : Linear(warm, i, alternators: false)));
        return
        [
            .. fed.SelectMany(g =>
            {
                var ways = g.Any(x => IsBattery(x.Feed)) ? g.Where(x => IsBattery(x.Feed)).ToArray() : [.. g];
                var open = ways.Where(x => x.Fed.Protections.IsEmpty).Take(1).ToArray();
                return (open.Length > 0 ? open : ways).Select(x => Tell(x.Fed, x.Feed, alone[x.Feed.Source.Index].Value));
            }),
        ];
    }

    private FaultResult Tell(ProtectedConductor fed, SupplyTree feed, FaultNetwork alone)
    {
        var conductor = fed.Conductor;
        var device = fed.Protections.LastOrDefault();
        var near = new Amps(Once(nearAmps, fed.Near.Index, strong.Short));
        var toBreak = device is null
            ? 0
            : Once(
                amountToBreak,
                device.Index,
                _ => Math.Max(ThroughWhenShorted(strong, device, device.A), ThroughWhenShorted(strong, device, device.B)));
        var far = new Amps(all.Short(fed.Far.Index));
        var through = new Amps(device is null ? 0 : ThroughWhenShorted(alone, device, fed.Far));
        var metal = ConductorProperties.MetalOf(conductor);
        var withstand = metal.Withstand(conductor.Wire.Size.Area, Initial(conductor), Final(conductor));
        Seconds? opens = null;
        Amps? breaking = device?.Breaking;
        if (device?.Rating is { Value: > 0 } rating)
        {
            var style = FuseConstruction.Of(device, new Amps(toBreak));
            opens = FuseTable.OpensWithin(style, through / rating);
            breaking ??= FuseTable.BreakingOf(style);
        }

        double? passes = opens is { Value: <= AdiabaticSeconds } t ? through.Value * through.Value * t.Value : null;
        return new(
            conductor,
            near,
            far,
            new(all.OpenVolts(fed.Far.Index)),
            fed,
            device,
            through,
            new(toBreak),
            opens,
            breaking,
            passes,
            withstand,
            device is null ? null : Upstream(fed, feed, device));
    }

    /// <summary>Temperature at the beginning of a short: that of the insulation, fully loaded.</summary>
    public static Celsius Initial(Conductor c) => new(Math.Min(c.Wire.Insulation.Value, 200));

    /// <summary>
    /// Limits of short circuits: 160 C for insulation up to 105 C as for PVC, 250 C above as for cross-linked (IEC 60364-5-54).
    /// </summary>
    public static Celsius Final(Conductor c) => new(c.Wire.Insulation.Value <= 105 ? 160 : 250);

    /// <summary>A device nearer to the source that may open first or together, and then cuts off more than this conductor.</summary>
    private static InternalConnection? Upstream(ProtectedConductor fed, SupplyTree feed, InternalConnection device) =>
        device.Rating is not { } rating ? null
            : fed.Protections.SkipLast(1)
                .LastOrDefault(p => p.Rating is { } r && r.Value < SelectiveRatio * rating.Value && CutsOffMore(p, fed, feed, device));

    /// <summary>
    /// Whether something lies behind the nearer device, not behind the other, and not on the way between: all behind the other is behind
    /// the nearer.
    /// </summary>
    private static bool CutsOffMore(InternalConnection upstream, ProtectedConductor fed, SupplyTree feed, InternalConnection device)
    {
        var more = feed.CountBehind(upstream) - feed.CountBehind(device);
        return more > fed.Depth || more > fed.Back().Count(b => b.Protections.Contains(upstream) && !b.Protections.Contains(device));
    }

    private bool IsOnly(int source) =>
        warm.Sources.All(s => s.Plus == source || warm.Circuit.Branches[s.Branch].Kind == BranchKind.Regulated);

    private static double Once(Dictionary<int, double> known, int key, Func<int, double> find) =>
        known.TryGetValue(key, out var value) ? value : known[key] = find(key);

    private double ThroughWhenShorted(FaultNetwork network, InternalConnection device, Terminal at)
    {
        network.Short(at.Index);
        return Math.Abs(network.Through(linkBranch[device.Index]));
    }

    private bool IsBattery(SupplyTree feed) => wiring.SourceAt(feed.Source)?.Source is BatterySource;

    /// <summary>The network without loads, of all sources or of one alone.</summary>
    private FaultNetwork Linear(SupplyCircuit supply, int? source, bool alternators)
    {
        var linear = new DcCircuit(supply.Circuit.Nodes);
        var batteries = wiring.Sources.Where(s => s.Source is BatterySource).Select(s => wiring.NetOf[s.Plus.Index]).ToHashSet();
        var poles = supply.Sources.Select(s => s.Plus).ToHashSet();
        foreach (var b in supply.Circuit.Branches)
        {
            _ = b.Kind switch
            {
                BranchKind.Resistor => linear.Resistor(b.A, b.B, b.Ohms),
                BranchKind.Battery or BranchKind.Source when source is null || b.A == source || !poles.Contains(b.A) =>
                    linear.Source(b.A, b.B, b.Value, b.Ohms),

                // Toward a battery of its own a diode is left out where the current must not be overrated.
                BranchKind.Diode when alternators || !batteries.Contains(wiring.NetOf[b.B]) => linear.Resistor(b.A, b.B, b.Ohms),
                BranchKind.Regulated when b.A == source || (source is null && batteries.Count == 0) =>
                    linear.Source(b.A, b.B, b.Value, double.IsFinite(b.Limit) && b.Limit > 0 ? b.Value / b.Limit : b.Ohms),
                BranchKind.Regulated when source is null && alternators && double.IsFinite(b.Limit) => linear.Current(b.B, b.A, b.Limit),
                _ => linear.Current(b.A, b.B, 0),
            };
        }

        return new(linear);
    }
}
