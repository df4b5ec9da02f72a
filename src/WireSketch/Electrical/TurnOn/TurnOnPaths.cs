using System.Collections.Immutable;
using WireSketch.Language.Kinds;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.TurnOn;

/// <summary>How every device that sleeps is woken, and what the control sources have to supply.</summary>
internal sealed class TurnOnPaths(Wiring wiring, ImmutableArray<SignalResult> signals)
{
    /// <summary>Coil current of a relay at the rated voltage.</summary>
    public static Amps CoilCurrent(Relay relay) => relay.CoilCurrent?.Value ?? (relay.CoilResistance is { } r ? Assume.Rated.Value / r.Value : Assume.RelayCoil.Value);

    public ImmutableArray<TurnOnResult> Solve() => [.. wiring.Gear.Where(g => g is Amplifier or Processor).Select(Answer)];

    /// <summary>The summed current at every source of control wires.</summary>
    public ImmutableArray<ControlLoad> ControlLoads()
    {
        var takers = wiring.Gear.SelectMany(Takers)
            .SelectMany(t => Sources(t.Terminal, null).Where(s => s.Gear is not (Battery or Alternator or GeneralSource)).Select(s => (Source: s.Index, Taker: (t.Terminal.Gear!, t.Amps))));
        return [.. takers.GroupBy(t => t.Source, t => t.Taker).OrderBy(g => g.Key).Select(s =>
        {
            var source = wiring.Terminals[s.Key];
            var limit = source.Gear switch
            {
                HeadUnit h => h.RemoteLimit?.Value,
                Processor p => p.RemoteLimit?.Value,
                IgnitionSource i => i.Limit?.Value,
                TapPoint t => t.Limit?.Value,
                _ => null,
            };
            return new ControlLoad(source, [.. s], limit ?? Assume.ControlLimit.Value, limit is null);
        })];
    }

    private IEnumerable<(Terminal Terminal, Amps Amps)> Takers(Gear device) => device switch
    {
        Amplifier a when wiring.TerminalOf(a, "remote") is { } t && wiring.IsWired(t) => [(t, a.RemoteCurrent?.Value ?? Assume.Remote.Value)],
        Processor p when wiring.TerminalOf(p, "remote-in") is { } t && wiring.IsWired(t) => [(t, Assume.Remote.Value)],
        Relay r when wiring.TerminalOf(r, "86") is { } t && wiring.IsWired(t) => [(t, CoilCurrent(r))],
        _ => [],
    };

    private TurnOnResult Answer(Gear device)
    {
        var (settings, wakesOn, remote) = device switch
        {
            Amplifier a => (a.Settings, a.WakesOn, wiring.TerminalOf(a, "remote")!),
            Processor p => (p.Settings, p.WakesOn, wiring.TerminalOf(p, "remote-in")!),
            _ => throw new ArgumentException("only amplifiers and processors are woken", nameof(device)),
        };
        var wired = wiring.IsWired(remote);
        var sources = wired ? Sources(remote, null) : [];
        var offset = signals.FirstOrDefault(s => ReferenceEquals(s.Gear, device) && CarriesOffset(s));
        var signal = signals.FirstOrDefault(s => ReferenceEquals(s.Gear, device) && s.FedBy is not null);
        var mode = settings.Wake?.Value ?? (wakesOn.IsEmpty ? WakeMode.Remote : Likeliest(wakesOn, !sources.IsEmpty, offset is not null, signal is not null));
        var taken = device.InVehicle && !wired && settings.Wake is null;
        WakeMode? by = mode switch
        {
            _ when taken => mode,
            WakeMode.Always => mode,
            WakeMode.Remote or WakeMode.Accessory when !sources.IsEmpty => mode,
            WakeMode.DcOffset when offset is not null => mode,
            WakeMode.Signal when signal is not null => mode,
            _ => null,
        };
        var source = mode switch
        {
            WakeMode.Remote or WakeMode.Accessory => sources.FirstOrDefault()?.Id,
            WakeMode.DcOffset => offset?.FedBy,
            WakeMode.Signal => signal?.FedBy,
            _ => null,
        };
        var other = mode is WakeMode.Remote or WakeMode.Accessory ? offset is not null : !sources.IsEmpty;
        var matches = by is not null || !other;
        var input = mode == WakeMode.DcOffset ? offset is not null : mode != WakeMode.Signal || signal is not null;
        var always = mode == WakeMode.Always || (mode is WakeMode.Remote or WakeMode.Accessory && by is not null && Sources(remote, SystemState.Standby).Any(IsLiveAlways));
        return new(device, by, source, mode, matches, input || taken, sources, wired, always && !device.Facts.AlwaysLive);
    }

    /// <summary>Where no setting is written: the first thing it can wake on that is there; else the first.</summary>
    private static WakeMode Likeliest(ImmutableArray<Written<WakeMode>> wakesOn, bool control, bool offset, bool signal) =>
        wakesOn.Select(w => (WakeMode?)w.Value).FirstOrDefault(w => w switch
        {
            WakeMode.Remote or WakeMode.Accessory => control,
            WakeMode.DcOffset => offset,
            WakeMode.Signal => signal,
            _ => true,
        }) ?? wakesOn[0].Value;

    internal static bool IsLiveAlways(Terminal source) =>
        source.Gear is Battery or GeneralSource or IgnitionSource { Live.Value: CircuitLive.Constant } or TapPoint { Carries.Value: TapContent.Constant };

    /// <summary>A DC offset starts at a speaker output of a head unit and goes on only through what passes it.</summary>
    private static bool CarriesOffset(SignalResult signal) =>
        !signal.Chain.IsEmpty
        && (signal.Chain[0] is TapPoint { Carries.Value: TapContent.Speaker } or Amplifier { InVehicle: true } || (signal.Chain[0] is HeadUnit { DcOffset: not false } radio && StartsAtSpeakerLevel(radio, signal)))
        && signal.Chain.Skip(1).All(g => g is LevelAdapter a && a.Passes.Any(p => p.Value == AdapterPass.DcOffset));

    private static bool StartsAtSpeakerLevel(HeadUnit radio, SignalResult signal) =>
        signal.Chain.Length > 1 ? signal.Chain[1] is LevelAdapter && radio.Outputs.Any(o => o.Level == SignalLevel.Speaker) : signal.Level == SignalLevel.Speaker;

    /// <summary>Every source that a control terminal is joined to, through wires, fuses and switches.</summary>
    internal ImmutableArray<Terminal> Sources(Terminal start, SystemState? state)
    {
        var seen = new HashSet<int> { start.Index };
        var queue = new Queue<Terminal>([start]);
        var found = new SortedDictionary<int, Terminal>();
        while (queue.TryDequeue(out var here))
        {
            if (here.Index != start.Index && IsSource(here))
            {
                found[here.Index] = here;
                continue;
            }

            foreach (var next in wiring.ConductorsAt[here.Index].Select(c => c.Other(here))
                .Concat(wiring.LinksAt[here.Index].Where(l => l.Kind is not (ConnectionKind.Chassis or ConnectionKind.FactoryLead) && (state is null || l.ClosedIn.Contains(state.Value))).Select(l => l.Other(here)))
                .Where(t => seen.Add(t.Index)))
            {
                queue.Enqueue(next);
            }
        }

        return [.. found.Values];
    }

    internal static bool IsSource(Terminal t) => t.Gear switch
    {
        HeadUnit => t.Shape.Name == "remote",
        Processor or LevelAdapter => t.Shape.Name == "remote-out",
        IgnitionSource => true,
        TapPoint tap => tap.Carries?.Value is TapContent.Control or TapContent.Accessory or TapContent.Constant,
        Battery or Alternator or GeneralSource => t.Shape.Name == "+",
        _ => false,
    };
}
