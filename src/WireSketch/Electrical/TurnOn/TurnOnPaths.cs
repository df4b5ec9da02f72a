using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.TurnOn;

/// <summary>How every device that sleeps is woken, and what the control sources have to supply.</summary>
internal sealed class TurnOnPaths(Wiring wiring, ImmutableArray<SignalResult> signals)
{
    /// <summary>What a remote terminal takes, and what a source of unknown limit can supply (common practice, no published source).</summary>
    private static readonly Amps RemoteCurrent = new(0.02);

    private static readonly Amps AssumedLimit = new(0.5);

    /// <summary>Coil current of a relay at 12 V where nobody wrote it (common practice, no published source).</summary>
    public static Amps CoilCurrent(Relay relay) => relay.CoilCurrent?.Value ?? (relay.CoilResistance is { } r ? new Volts(12) / r.Value : new Amps(0.15));

    public ImmutableArray<TurnOnResult> Solve() => [.. wiring.Gear.Where(g => g is Amplifier or Processor).Select(Answer)];

    /// <summary>The summed current at every source of control wires.</summary>
    public ImmutableArray<ControlLoad> ControlLoads()
    {
        var takers = wiring.Gear.SelectMany(Takers)
            .SelectMany(t => Sources(t.Terminal, null).Where(s => !TerminalRoles.IsSource(s.Gear)).Select(s => (Source: s.Index, Taker: (t.Terminal.Gear!, t.Amps))));
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
            return new ControlLoad(source, [.. s], limit ?? AssumedLimit, limit is null);
        })];
    }

    private IEnumerable<(Terminal Terminal, Amps Amps)> Takers(Gear device) => device switch
    {
        Amplifier a when wiring.TerminalOf(a, "remote") is { } t && wiring.IsWired(t) => [(t, a.RemoteCurrent?.Value ?? RemoteCurrent)],
        Processor p when wiring.TerminalOf(p, "remote-in") is { } t && wiring.IsWired(t) => [(t, RemoteCurrent)],
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
        var mode = settings.Wake?.Value ?? (wakesOn.IsEmpty ? "remote" : Likeliest(wakesOn, !sources.IsEmpty, offset is not null, signal is not null));
        var taken = device.InVehicle && !wired && settings.Wake is null;
        string? by = mode switch
        {
            _ when taken => mode,
            "always" => mode,
            "remote" or "accessory" when !sources.IsEmpty => mode,
            "dc offset" when offset is not null => mode,
            "signal" when signal is not null => mode,
            _ => null,
        };
        var source = mode switch
        {
            "remote" or "accessory" => sources.FirstOrDefault()?.Id,
            "dc offset" => offset?.FedBy,
            "signal" => signal?.FedBy,
            _ => null,
        };
        var other = mode is "remote" or "accessory" ? offset is not null : !sources.IsEmpty;
        var matches = by is not null || !other;
        var input = mode == "dc offset" ? offset is not null : mode != "signal" || signal is not null;
        var always = mode == "always" || (mode is "remote" or "accessory" && by is not null && Sources(remote, "standby").Any(TerminalRoles.IsLiveAlways));
        return new(device, by, source, mode, matches, input || taken, sources, wired, always && !device.Facts.AlwaysLive);
    }

    /// <summary>Where no setting is written: the first thing it can wake on that is there; else the first.</summary>
    private static string Likeliest(ImmutableArray<Written<string>> wakesOn, bool control, bool offset, bool signal) =>
        wakesOn.Select(w => w.Value).FirstOrDefault(w => w switch
        {
            "remote" or "accessory" => control,
            "dc offset" => offset,
            "signal" => signal,
            _ => true,
        }) ?? wakesOn[0].Value;

    /// <summary>A DC offset starts at a speaker output of a head unit and goes on only through what passes it.</summary>
    private static bool CarriesOffset(SignalResult signal) =>
        !signal.Chain.IsEmpty
        && (signal.Chain[0] is TapPoint { Carries.Value: "speaker" } or Amplifier { InVehicle: true } || (signal.Chain[0] is HeadUnit { DcOffset: not false } radio && StartsAtSpeakerLevel(radio, signal)))
        && signal.Chain.Skip(1).All(g => g is LevelAdapter a && a.Passes.Any(p => p.Value == "dc offset"));

    private static bool StartsAtSpeakerLevel(HeadUnit radio, SignalResult signal) =>
        signal.Chain.Length > 1 ? signal.Chain[1] is LevelAdapter && radio.Outputs.Any(o => o.Level == "speaker") : signal.Level == "speaker";

    /// <summary>Every source that a control terminal is joined to, through wires, fuses and switches.</summary>
    internal ImmutableArray<Terminal> Sources(Terminal start, string? state) =>
    [
        .. wiring.Graph.From(start).Over(Follow.All, state is null ? Pass.WithoutVehicle : Pass.ClosedIn(state)).EndingAt(t => t.Index != start.Index && TerminalRoles.GivesTurnOn(t)).Terminals()
            .Where(t => t.Index != start.Index && TerminalRoles.GivesTurnOn(t)).OrderBy(t => t.Index),
    ];
}
