using System.Collections.Immutable;
using System.Numerics;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Speakers;

/// <summary>The load on every speaker output: impedance, power by coil, which way coils move, what to set the gain to.</summary>
internal sealed class ChannelLoads
{
    /// <summary>A load below this is a short.</summary>
    private const double Short = 0.2;

    private readonly Wiring wiring;
    private readonly SpeakerNetworks networks;
    private readonly ImmutableArray<Output> outputs;
    private readonly ILookup<int, Output> at;

    public ChannelLoads(Wiring wiring, Func<Conductor, Ohms> resistance)
    {
        this.wiring = wiring;
        networks = new(wiring, resistance);
        outputs = [.. wiring.Gear.SelectMany(OutputsOf)];
        at = outputs.SelectMany(o => new[] { o.Plus, o.Minus }.Select(t => (Root: networks.RootOf(t), Output: o)))
            .Distinct()
            .ToLookup(x => x.Root, x => x.Output);
    }

    public ImmutableArray<ChannelResult> Find()
    {
        var answers = ImmutableArray.CreateBuilder<ChannelResult>();
        var bridged = new HashSet<Output>();
        foreach (var output in outputs)
        {
            if (BridgeOf(output) is { } bridge)
            {
                if (bridged.Add(bridge.Plus) && bridged.Add(bridge.Minus))
                {
                    answers.Add(TellBridge(bridge.Plus, bridge.Minus));
                }
            }
            else if (IsWired(output.Plus) || IsWired(output.Minus))
            {
                answers.Add(TellSingle(output));
            }
        }

        return answers.ToImmutable();
    }

    private bool IsWired(Terminal t) => wiring.IsWired(t) || wiring.LinksAt[t.Index].Length > 0;

    private IEnumerable<Output> OutputsOf(Gear gear) => gear.SignalOutputs.Where(o => o.DrivesSpeakers)
        .Select(o =>
            new Output(
                gear, o.Terminal.Name, wiring.PlusOf(gear, o.Terminal), wiring.MinusOf(gear, o.Terminal), o.Amplifies, o.Maximum?.Value));

    /// <summary>A load from the plus of one half to the minus of the other, of two channels that may be bridged.</summary>
    private (Output Plus, Output Minus)? BridgeOf(Output output)
    {
        foreach (var other in at[networks.RootOf(output.Plus)].Concat(at[networks.RootOf(output.Minus)]))
        {
            if (other == output || !MayBridge(output, other))
            {
                continue;
            }

            var (plus, minus) = networks.RootOf(output.Plus) == networks.RootOf(other.Minus) ? (output, other) : (other, output);
            var root = networks.RootOf(plus.Plus);
            if (root == networks.RootOf(minus.Minus)
                && root != networks.RootOf(plus.Minus)
                && root != networks.RootOf(minus.Plus)
                && at[root].Count() == 2)
            {
                return (plus, minus);
            }
        }

        return null;
    }

    private static bool MayBridge(Output a, Output b) =>
        ReferenceEquals(a.Gear, b.Gear) && (a.Channel?.BridgesWith?.Value == b.Name || b.Channel?.BridgesWith?.Value == a.Name);

    private ChannelResult TellSingle(Output o)
    {
        var curve = o.Channel is { } c ? PowerCurve.Of(c) : o.Most is { } most ? PowerCurve.OfVolts(most) : null;
        Ohms? minimum = o.Channel?.Minimum?.Value ?? (o.Channel is null ? null : curve?.Lowest);
        var root = networks.RootOf(o.Plus);
        var fault = at[root].Concat(at[networks.RootOf(o.Minus)]).Any(x => x != o) ? LoadFault.TiedToOutput
            : networks.IsGrounded(o.Plus) || networks.IsGrounded(o.Minus) ? LoadFault.Grounded
            : root != networks.RootOf(o.Minus) ? LoadFault.Open : LoadFault.None;
        return Tell(o.Gear, o.Name, null, o.Plus, o.Minus, fault, curve, minimum, 1);
    }

    private ChannelResult TellBridge(Output plus, Output minus)
    {
        var declared = plus.Channel!.BridgesWith?.Value == minus.Name ? plus : minus;
        var other = declared == plus ? minus : plus;
        var curve = PowerCurve.OfBridge(declared.Channel!);
        var halves = new[] { plus, minus }.Select(o => o.Channel!.Minimum?.Value ?? PowerCurve.Of(o.Channel).Lowest)
            .OfType<Ohms>()
            .ToArray();
        Ohms? minimum = declared.Channel!.BridgedMinimum?.Value ?? (halves.Length > 0 ? 2 * halves.Max() : null);
        var fault = new[] { plus.Plus, plus.Minus, minus.Plus, minus.Minus }.Any(networks.IsGrounded) ? LoadFault.Grounded : LoadFault.None;
        return Tell(declared.Gear, declared.Name, other.Name, plus.Plus, minus.Minus, fault, curve, minimum, 2);
    }

    private ChannelResult Tell(
        Gear gear, string name, string? with, Terminal plus, Terminal minus, LoadFault fault, PowerCurve? curve, Ohms? minimum, int halves)
    {
        var load = networks.RootOf(plus) == networks.RootOf(minus) ? networks.At(plus) : null;
        var hanging = new[] { networks.At(plus), networks.At(minus) }.OfType<SpeakerNetwork>()
            .Distinct()
            .SelectMany(n => n.Parts)
            .OfType<NetworkPart.CoilPart>()
            .ToArray();
        if (load is not null && fault is (LoadFault.None or LoadFault.Open) && load.Touches(plus, minus))
        {
            return new(
                gear,
                name,
                with,
                LoadFault.Shorted,
                new(0),
                new(0),
                new(0),
                minimum,
                null,
                null,
                null,
                new(0),
                [.. hanging.Select(c => new CoilResult(c.Speaker, c.Number, null, new(0), false, true, Handles(c)))]);
        }

        var looks = load?.Frequencies.Select(f =>
            (Coils: load.Drive(plus, minus, NetworkView.Coils, f), Wires: load.Drive(plus, minus, NetworkView.Wires, f)))
            .Where(l => l.Coils.Impedance is not null && l.Wires.Impedance is not null).ToArray() ?? [];
        if (load is null || looks.Length == 0)
        {
            var open = fault == LoadFault.None ? LoadFault.Open : fault;
            return new(
                gear,
                name,
                with,
                open,
                null,
                null,
                null,
                minimum,
                null,
                null,
                null,
                new(0),
                [.. hanging.Select(c => new CoilResult(c.Speaker, c.Number, null, new(0), false, true, Handles(c)))]);
        }

        var nominal = looks.Min(l => l.Coils.Impedance!.Value.Magnitude);
        var loaded = looks.MinBy(l => l.Wires.Impedance!.Value.Magnitude).Wires.Impedance!.Value.Magnitude;
        fault = nominal < Short && fault is LoadFault.None or LoadFault.Open ? LoadFault.Shorted : fault;
        if (fault == LoadFault.Shorted)
        {
            return new(
                gear,
                name,
                with,
                fault,
                new(nominal),
                new(loaded),
                new(nominal / halves),
                minimum,
                null,
                null,
                null,
                new(0),
                [.. hanging.Select(c => new CoilResult(c.Speaker, c.Number, null, new(0), false, true, Handles(c)))]);
        }

        Volts? volts = curve is { IsKnown: true } ? curve.VoltsAt(new(loaded)) : null;
        Watts? power = volts is { } u ? new Watts(u.Value * u.Value / loaded) : null;
        var moves = load.Drive(plus, minus, NetworkView.Polarity, looks.Length > 0 ? load.Frequencies.First() : 0).Coils;
        var wired = looks.Select(l => l.Wires.Coils).ToArray();
        var coils = hanging.Select(c => TellCoil(c, wired, moves, volts)).ToImmutableArray();
        var total = coils.Sum(c => c.Per);
        var loss = looks.Max(l => Loss(l.Coils, l.Wires));
        var answers = coils.Select(c => c.Answer with { ShareOfPower = new(total > 0 ? c.Per / total : 0) }).ToImmutableArray();
        return new(
            gear, name, with, fault, new(nominal), new(loaded), new(nominal / halves), minimum, power, volts, Target(volts, answers),
            new(loss), answers)
        {
            Meter = Meter(load, plus, minus),
        };
    }

    /// <summary>
    /// What an ohm meter shows at the output; null where a crossover is in the way, or the winding of a coil is not known.
    /// </summary>
    private static Ohms? Meter(SpeakerNetwork load, Terminal plus, Terminal minus) =>
        load.Parts.All(p => p is NetworkPart.Resistance or NetworkPart.CoilPart { Speaker.DcResistance: not null })
            && load.Drive(plus, minus, NetworkView.Meter, load.Frequencies.First()).Impedance is { } z
            ? new(z.Real) : null;

    /// <summary>Volts at which no coil takes more than it handles, nor the channel gives more than it can.</summary>
    private static Volts? Target(Volts? volts, ImmutableArray<CoilResult> coils)
    {
        if (volts is not { } most)
        {
            return null;
        }

        var share = coils.Where(c => c is { Power.Value: > 0, Handles: not null })
            .Select(c => c.Handles!.Value / c.Power!.Value)
            .DefaultIfEmpty(1)
            .Min();
        return most * Math.Sqrt(Math.Min(1, share));
    }

    private static (CoilResult Answer, double Per) TellCoil(
        NetworkPart.CoilPart coil,
        IEnumerable<ImmutableArray<(NetworkPart.CoilPart Coil, Complex Amps)>> looks,
        ImmutableArray<(NetworkPart.CoilPart Coil, Complex Amps)> moves,
        Volts? volts)
    {
        // Watts in the coil for one volt at the output, where it takes the most.
        var amps = looks.Select(l => l.First(x => ReferenceEquals(x.Coil, coil)).Amps.Magnitude).Max();
        var per = amps * amps * coil.Speaker.CoilImpedance.Value;
        var way = moves.First(m => ReferenceEquals(m.Coil, coil)).Amps.Real;
        var open = amps < 1e-9;
        return (
            new(
                coil.Speaker,
                coil.Number,
                volts is { } v ? new Watts(per * v.Value * v.Value) : null,
                new(0),
                !open && way < -1e-9,
                open,
                Handles(coil)),
            per);
    }

    /// <summary>Level that the wires take from the coils, as a positive number.</summary>
    private static double Loss(NetworkSolution ideal, NetworkSolution real)
    {
        static double Power(NetworkSolution a) =>
            a.Coils.Sum(c => c.Amps.Magnitude * c.Amps.Magnitude * c.Coil.Speaker.CoilImpedance.Value);
        var (all, left) = (Power(ideal), Power(real));
        return all > 0 && left > 0 ? Math.Max(0, Decibels.FromPowerRatio(all / left).Value) : 0;
    }

    private static Watts? Handles(NetworkPart.CoilPart coil) => coil.Speaker.Handles is { } h ? h.Value / coil.Speaker.CoilCount : null;

    /// <summary>A pair of output terminals; the very one counts, not one like it.</summary>
    private sealed class Output(Gear gear, string name, Terminal plus, Terminal minus, AmplifierChannel? channel, Volts? most)
    {
        public Gear Gear => gear;

        public string Name => name;

        public Terminal Plus => plus;

        public Terminal Minus => minus;

        public AmplifierChannel? Channel => channel;

        public Volts? Most => most;
    }
}
