using System.Collections.Immutable;
using WireSketch.Electrical.Energy;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Electrical.TurnOn;

/// <summary>How every device that sleeps is woken, and what the control sources have to supply.</summary>
internal sealed class TurnOnPaths(Wiring wiring, ImmutableArray<SignalResult> signals)
{
    public ImmutableArray<TurnOnResult> Solve() => [
        .. wiring.Gear.SelectMany(g => g.TurnOnInputs.Where(i => i.Sleep is not null).Select(i => Answer(g, i, i.Sleep!)))
    ];

    /// <summary>The summed current at every source of control wires.</summary>
    public ImmutableArray<ControlLoad> ControlLoads()
    {
        var takers = wiring.Gear.SelectMany(Takers)
            .SelectMany(t =>
                Sources(t.Terminal, null).Where(s => wiring.SourceAt(s) is not { HasPoles: true })
                    .Select(s => (Source: s.Index, Taker: (t.Terminal.Gear!, t.Amps))));
        return [.. takers.GroupBy(t => t.Source, t => t.Taker).OrderBy(g => g.Key).Select(s =>
        {
            var source = wiring.Terminals[s.Key];
            var limit = LimitOf(source);
            return new ControlLoad(source, [.. s], limit?.Value ?? Assume.ControlLimit.Value, limit is null);
        })];
    }

    /// <summary>The most that a source of a turn-on signal supplies, as written.</summary>
    internal static Written<Amps>? LimitOf(Terminal source) =>
        source.Gear?.TurnOnOutputs.FirstOrDefault(o => o.Terminal == source.Shape) is { } output
            ? output.Limit
            : (source.Gear?.SourceAt(source.Shape) as VehicleCircuit)?.Limit;

    /// <summary>What draws on a turn-on wire: the inputs of what sleeps, and coils that are driven by one.</summary>
    private IEnumerable<(Terminal Terminal, Amps Amps)> Takers(Gear device) =>
        device.TurnOnInputs.Where(i => i.Sleep is not null)
            .Select(i => (Terminal: wiring.At(device, i.Terminal), Amps: i.Current?.Value ?? Assume.Remote.Value))
            .Concat(device.PowerInputs.Where(p => p is { Plus.Role: TerminalRole.Control, Takes: CoilDraw })
                .Select(p => (Terminal: wiring.At(device, p.Plus), Amps: LoadModels.CoilCurrent((CoilDraw)p.Takes))))
            .Where(t => wiring.IsWired(t.Terminal));

    private TurnOnResult Answer(Gear device, TurnOnInput input, SleepSettings sleep)
    {
        var (setting, wakesOn, remote) = (sleep.Setting, sleep.WakesOn, wiring.At(device, input.Terminal));
        var wired = wiring.IsWired(remote);
        var sources = wired ? Sources(remote, null) : [];
        var offset = signals.FirstOrDefault(s => ReferenceEquals(s.Gear, device) && CarriesOffset(s));
        var signal = signals.FirstOrDefault(s => ReferenceEquals(s.Gear, device) && s.FedBy is not null);
        var mode = setting?.Value
            ?? (wakesOn.IsEmpty ? WakeMode.Remote : Likeliest(wakesOn, !sources.IsEmpty, offset is not null, signal is not null));
        var taken = device.InVehicle && !wired && setting is null;
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
        var carried = mode == WakeMode.DcOffset ? offset is not null : mode != WakeMode.Signal || signal is not null;
        var always = mode == WakeMode.Always
            || (mode is WakeMode.Remote or WakeMode.Accessory
                && by is not null
                && Sources(remote, SystemState.Standby).Any(TerminalRoles.IsLiveAlways));
        return new(device, by, source, mode, matches, carried || taken, sources, wired, always && !device.Facts.AlwaysLive);
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

    /// <summary>A DC offset starts at a speaker output and goes on only through what passes it.</summary>
    private static bool CarriesOffset(SignalResult signal) =>
        !signal.Chain.IsEmpty
            && signal.Chain[0].SignalOutputs.Any(o => o.HasDcOffset)
            && (signal.Chain.Length > 1 || signal.Level == SignalLevel.Speaker)
        && signal.Chain.Skip(1).All(g => g.SignalOutputs.Any(o => o.PassesDcOffset));

    /// <summary>Every source that a control terminal is joined to, through wires, fuses and switches.</summary>
    internal ImmutableArray<Terminal> Sources(Terminal start, SystemState? state) =>
    [
        .. wiring.Graph.From(start)
            .Over(Follow.All, state is null ? Pass.WithoutVehicle : Pass.ClosedIn(state.Value))
            .EndingAt(t => t.Index != start.Index && TerminalRoles.GivesTurnOn(t))
            .Terminals()
            .Where(t => t.Index != start.Index && TerminalRoles.GivesTurnOn(t)).OrderBy(t => t.Index),
    ];
}
