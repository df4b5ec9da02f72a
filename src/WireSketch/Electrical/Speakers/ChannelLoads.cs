using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.Speakers;

/// <summary>The load on every amplifier channel, bridged pair and speaker output of a head unit.</summary>
internal sealed class ChannelLoads(Wiring wiring, Func<Conductor, Ohms> resistance)
{
    /// <summary>A load below this is a short (common practice, no published source).</summary>
    private const double Short = 0.2;

    public ImmutableArray<ChannelAnswer> Solve() =>
        [.. wiring.Gear.SelectMany(g => g switch
        {
            Amplifier amp => OfAmplifier(amp),
            HeadUnit radio => OfHeadUnit(radio),
            _ => [],
        })];

    private IEnumerable<ChannelAnswer> OfAmplifier(Amplifier amp)
    {
        var halves = new HashSet<string>(StringComparer.Ordinal);
        var answers = new Dictionary<string, ChannelAnswer>(StringComparer.Ordinal);
        foreach (var channel in amp.Channels.Where(c => c.BridgesWith is not null))
        {
            var other = amp.Channels.FirstOrDefault(c => c.Name.Value == channel.BridgesWith!.Value.Value);
            if (other is not null && Bridge(amp, channel, other) is { } bridged)
            {
                answers[channel.Name.Value] = bridged;
                halves.Add(other.Name.Value);
            }
        }

        foreach (var channel in amp.Channels)
        {
            var name = channel.Name.Value;
            if (answers.TryGetValue(name, out var bridged))
            {
                yield return bridged;
            }
            else if (!halves.Contains(name) && Single(amp, name, channel.Power, MinimumOf(channel)) is { } single)
            {
                yield return single;
            }
        }
    }

    private IEnumerable<ChannelAnswer> OfHeadUnit(HeadUnit radio) =>
        radio.Outputs.Where(o => o.Level == "speaker")
            .SelectMany(o => TerminalShape.ChannelNames(o.Channels).Select(m => $"{o.Name.Value}.{m}"))
            .Select(name => Single(radio, name, [], null))
            .OfType<ChannelAnswer>()
            .Where(a => !a.Coils.IsEmpty);

    private static Ohms? MinimumOf(AmplifierChannel channel) =>
        channel.Minimum?.Value ?? (channel.Power.IsEmpty ? null : channel.Power.Select(p => p.Key.Value).Min());

    /// <summary>A bridge is wired if the two outer terminals, and they alone, lead into one network.</summary>
    private ChannelAnswer? Bridge(Amplifier amp, AmplifierChannel channel, AmplifierChannel other)
    {
        var (name, second) = (channel.Name.Value, other.Name.Value);
        foreach (var (plusOf, minusOf) in new[] { (name, second), (second, name) })
        {
            var plus = wiring.TerminalsById[$"{amp.Id}.{plusOf}.+"];
            var minus = wiring.TerminalsById[$"{amp.Id}.{minusOf}.-"];
            var inner = new[] { wiring.TerminalsById[$"{amp.Id}.{plusOf}.-"], wiring.TerminalsById[$"{amp.Id}.{minusOf}.+"] };
            if (wiring.IsWired(plus) && wiring.IsWired(minus) && inner.All(t => !wiring.IsWired(t)))
            {
                var power = channel.Bridged.IsEmpty ? Doubled(channel.Power) : channel.Bridged;
                var minimum = channel.BridgedMinimum?.Value ?? (MinimumOf(channel) is { } half ? new Ohms(2 * half.Value) : null);
                return Answer(amp, name, second, plus, minus, power, minimum, halves: 2);
            }
        }

        return null;
    }

    /// <summary>Twice the power at twice the load, for each load of one half.</summary>
    private static ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> Doubled(ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> half) =>
        [.. half.Select(p => (p.Key with { Value = p.Key.Value * 2 }, p.Value with { Value = p.Value.Value * 2 }))];

    private ChannelAnswer? Single(Gear device, string name, ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> power, Ohms? minimum)
    {
        var plus = wiring.TerminalsById[$"{device.Id}.{name}.+"];
        var minus = wiring.TerminalsById[$"{device.Id}.{name}.-"];
        return wiring.IsWired(plus) || wiring.IsWired(minus) ? Answer(device, name, null, plus, minus, power, minimum, halves: 1) : null;
    }

    private ChannelAnswer Answer(
        Gear device, string name, string? with, Terminal plus, Terminal minus, ImmutableArray<(Written<Ohms> Key, Written<Watts> Value)> table, Ohms? minimum, int halves)
    {
        var network = CoilNetwork.From(wiring, plus, minus, resistance);
        var ideal = network.Solve(plus, minus, wired: false);
        var real = network.Solve(plus, minus, wired: true);
        var nominal = ideal?.Ohms;
        var fault = FaultOf(network, device, name, with, nominal);
        Ohms? loaded = real is { } r ? new(r.Ohms) : null;
        Watts? given = nominal is > Short && loaded is { } load && fault == LoadFault.None ? PowerTable.At(table, load) : null;
        var volts = given is { } p && loaded is { } l ? Math.Sqrt(p.Value * l.Value) : (double?)null;
        var coils = Coils(network, ideal?.CoilVolts, real?.CoilVolts, volts);
        return new(
            device, name, with, fault, nominal is { } n ? new(n) : null, loaded, nominal is { } h ? new(h / halves) : null, minimum, given,
            volts is { } v ? new(v) : null, Target(volts, coils), Loss(real, coils), coils);
    }

    private LoadFault FaultOf(CoilNetwork network, Gear device, string name, string? with, double? nominal)
    {
        if (network.Terminals.Contains(wiring.Body.Index) || network.Terminals.Any(t => wiring.LinksAt[t].Any(l => l.Kind == LinkKind.Chassis)))
        {
            return LoadFault.Grounded;
        }

        var own = new[] { name, with };
        var foreign = network.Terminals.Select(i => wiring.Terminals[i]).Any(t =>
            t is { Role: TerminalRole.Speaker, Shape.Flow: TerminalFlow.Out, Gear: { } g } && !(ReferenceEquals(g, device) && own.Contains(t.Shape.Name, StringComparer.Ordinal)));
        return foreign ? LoadFault.TiedToOutput : nominal is null ? LoadFault.Open : nominal < Short ? LoadFault.Shorted : LoadFault.None;
    }

    private static ImmutableArray<CoilAnswer> Coils(CoilNetwork network, ImmutableArray<double>? ideal, ImmutableArray<double>? real, double? volts)
    {
        var shares = network.Coils.Select((c, i) => ideal is { } v ? v[i] * v[i] / c.Impedance.Value : 0).ToArray();
        var all = shares.Sum();
        return [.. network.Coils.Select((c, i) =>
        {
            var drop = real is { } v ? v[i] : 0;
            var open = Math.Abs(ideal is { } w ? w[i] : 0) < 1e-6;
            Watts? power = volts is { } u ? new(u * drop * u * drop / c.Impedance.Value) : null;
            return new CoilAnswer(
                c.Speaker, c.Number, power, new(all > 0 ? shares[i] / all : 0), !open && drop < 0, open,
                c.Speaker.Handles is { } h ? h.Value / c.Speaker.CoilCount : null);
        })];
    }

    /// <summary>The smaller of what the channel gives and what lets no coil exceed its share of what its driver takes.</summary>
    private static Volts? Target(double? volts, ImmutableArray<CoilAnswer> coils)
    {
        if (volts is not { } full)
        {
            return null;
        }

        var limit = coils.Where(c => c.Power is { Value: > 0 } && c.Handles is not null).Select(c => Math.Sqrt(c.Handles!.Value.Value / c.Power!.Value.Value)).DefaultIfEmpty(1).Min();
        return new(full * Math.Min(1, limit));
    }

    private static Decibels Loss((double Ohms, ImmutableArray<double> CoilVolts)? real, ImmutableArray<CoilAnswer> coils)
    {
        if (real is not { } r || coils.IsEmpty)
        {
            return new(0);
        }

        var inCoils = coils.Select((c, i) => r.CoilVolts[i] * r.CoilVolts[i] / c.Speaker.CoilImpedance.Value).Sum();
        return inCoils > 0 ? new(Math.Max(0, -10 * Math.Log10(inCoils * r.Ohms))) : new(0);
    }
}
