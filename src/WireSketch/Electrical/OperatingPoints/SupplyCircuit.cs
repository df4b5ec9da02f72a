using WireSketch.Electrical.Conductors;
using WireSketch.Electrical.Energy;
using WireSketch.Electrical.Solver;
using WireSketch.Language;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Electrical.OperatingPoints;

/// <summary>
/// The supply network of a wiring in one state as a circuit. Nodes are terminals by their index, so the body is the reference;
/// signal and speaker wires take no part.
/// </summary>
internal sealed class SupplyCircuit
{
    private readonly Wiring wiring;
    private readonly SystemState state;
    private readonly Battery? first;
    private readonly IReadOnlyCollection<Relay> driven;
    private readonly IReadOnlyCollection<Relay> pulledIn;

    /// <param name="wiring">The wiring.</param>
    /// <param name="state">The state.</param>
    /// <param name="temperatures">Of every conductor, by its index.</param>
    /// <param name="pulledIn">Of the relays whose coils are wired, those that are pulled in; null to let all contacts go by the state alone.</param>
    public SupplyCircuit(Wiring wiring, SystemState state, IReadOnlyList<Celsius> temperatures, IReadOnlyCollection<Relay>? pulledIn = null)
    {
        driven = pulledIn is null ? [] : Relays.Driven(wiring);
        this.pulledIn = pulledIn ?? [];
        this.wiring = wiring;
        this.state = state;
        first = wiring.Starter;
        Circuit = new(wiring.Terminals.Length);
        ConductorBranch = new int[wiring.Conductors.Length];
        LinkBranch = new int[wiring.Links.Length];
        foreach (var c in wiring.Conductors)
        {
            ConductorBranch[c.Index] = Carries(c) ? Circuit.Resistor(c.From.Index, c.To.Index, ConductorProperties.At(c, temperatures[c.Index]).Value) : -1;
        }

        foreach (var link in wiring.Links)
        {
            LinkBranch[link.Index] = Close(link);
        }

        foreach (var gear in wiring.Gear)
        {
            AddSource(gear);
        }

        AddVehicle();
    }

    public DcCircuit Circuit { get; }

    /// <summary>Branch of each conductor; −1 for what takes no part.</summary>
    public int[] ConductorBranch { get; }

    /// <summary>Branch of each link; −1 for an open one.</summary>
    public int[] LinkBranch { get; }

    /// <summary>Sources with their branch, terminals, and limit.</summary>
    public List<(string Id, int Branch, int Plus, int Minus, double Limit)> Sources { get; } = [];

    /// <summary>Loads in the order of <see cref="Wiring.Loads"/>, with their branch; −1 for what is not in the circuit.</summary>
    public List<(LoadPath Path, int Branch, LoadModel Draw)> Loads { get; } = [];

    public static bool Carries(Conductor c) => c.Kind is RunKind.Supply or RunKind.Ground or RunKind.Control && !c.IsShield;

    /// <summary>Adds what draws from the network.</summary>
    public void AddLoads(Func<Gear, SystemState, LoadModel> drawOf)
    {
        foreach (var path in wiring.Loads)
        {
            var draw = drawOf(path.Gear, state);
            if (path.IsTakenAsWired)
            {
                Loads.Add((path, -1, draw));
                continue;
            }

            if (path.HasReturn && path.Return.IsEmpty && path.Minus != wiring.Body)
            {
                Circuit.Resistor(path.Minus.Index, wiring.Body.Index, Defaults.FactoryLead.Value);
            }

            var (plus, minus) = (path.Plus.Index, path.Minus.Index);
            Loads.Add((path, draw.Kind switch
            {
                LoadModelKind.Power => Circuit.Power(plus, minus, draw.Size),
                LoadModelKind.Current => Circuit.Current(plus, minus, draw.Size, 1),
                _ => Circuit.Resistor(plus, minus, draw.Size),
            }, draw));
            if (state != SystemState.Standby)
            {
                AddRemote(path);
            }
        }

        if (first is not null && Defaults.EngineRuns(state))
        {
            Circuit.Current(wiring.TerminalOf(first, "+")!.Index, wiring.Body.Index, Defaults.BaseLoad(wiring).Value, 1);
        }
    }

    private void AddRemote(LoadPath path)
    {
        var (name, amps) = path.Gear switch
        {
            Amplifier a => ("remote", a.RemoteCurrent?.Value ?? Defaults.Remote),
            Processor => ("remote-in", Defaults.Remote),
            HeadUnit => ("accessory", Defaults.Remote),
            _ => ("", default),
        };
        if (name.Length > 0 && wiring.TerminalOf(path.Gear, name) is { } remote && wiring.IsWired(remote))
        {
            Circuit.Current(remote.Index, path.Minus.Index, amps.Value, 1);
        }
    }

    private int Close(InternalConnection link)
    {
        if (!Relays.IsClosed(link, States.Words[(int)state], driven, pulledIn) || link.A.Role is TerminalRole.Speaker or TerminalRole.Line)
        {
            return -1;
        }

        var (a, b) = (link.A.Index, link.B.Index);
        var ohms = ConnectionProperties.Of(link).Ohms.Value;
        return link.Kind == ConnectionKind.Diode ? Circuit.Diode(a, b, link.Drop?.Value ?? 0.7, ohms) : Circuit.Resistor(a, b, ohms);
    }

    private void AddSource(Gear gear)
    {
        switch (gear)
        {
            case Battery b:
                var (plus, minus) = Poles(b);
                var branch = Circuit.Battery(plus, minus, Defaults.Rest(wiring, b).Value, Defaults.Internal(b).Value, Defaults.Charging(b).Value);
                Sources.Add((b.Id, branch, plus, minus, double.PositiveInfinity));
                break;
            case Alternator a when Defaults.EngineRuns(state):
                AddRegulated(a.Id, Poles(a), Defaults.Regulated(wiring, a), Defaults.Output(wiring, a, state));
                break;
            case GeneralSource s when first is null || Defaults.EngineRuns(state):
                AddRegulated(s.Id, Poles(s), s.Voltage?.Value ?? new Volts(14.2), s.Current?.Value);
                break;
            case IgnitionSource { Live.Value: not "start" } i when state != SystemState.Standby || i.Live?.Value == "constant":
                Feed(wiring.TerminalOf(i, "")!.Index, i.Voltage?.Value, Defaults.FactoryCircuit);
                break;
            case TapPoint { Carries.Value: "constant" or "accessory" or "control" } t when state != SystemState.Standby || t.Carries?.Value == "constant":
                Feed(wiring.TerminalOf(t, "")!.Index, null, Defaults.FactoryCircuit);
                break;
            case HeadUnit h when state != SystemState.Standby:
                Switch(wiring.TerminalOf(h, "remote")!, wiring.TerminalOf(h, "battery")!);
                break;
            case Processor p when state != SystemState.Standby:
                Switch(wiring.TerminalOf(p, "remote-out")!, wiring.TerminalOf(p, "+")!);
                break;
            case LevelAdapter l when state != SystemState.Standby:
                Switch(wiring.TerminalOf(l, "remote-out")!, wiring.TerminalOf(l, "+")!);
                break;
        }
    }

    private (int Plus, int Minus) Poles(Gear gear) => (wiring.TerminalOf(gear, "+")!.Index, wiring.TerminalOf(gear, "-")!.Index);

    private void AddRegulated(string id, (int Plus, int Minus) poles, Volts volts, Amps? limit)
    {
        var most = limit?.Value ?? double.PositiveInfinity;
        Sources.Add((id, Circuit.Regulated(poles.Plus, poles.Minus, volts.Value, Defaults.Regulator.Value, most), poles.Plus, poles.Minus, most));
    }

    /// <summary>A remote output takes its volts from the device's supply; where that is taken for granted, from the first battery.</summary>
    private void Switch(Terminal output, Terminal supply)
    {
        if (!wiring.IsWired(output))
        {
            return;
        }

        if (wiring.IsWired(supply))
        {
            Circuit.Resistor(supply.Index, output.Index, Defaults.RemoteSwitch.Value);
        }
        else
        {
            Feed(output.Index, null, Defaults.RemoteSwitch);
        }
    }

    /// <summary>A vehicle circuit: from the first battery, or by itself if it states its volts or there is no battery.</summary>
    private void Feed(int node, Volts? own, Ohms through)
    {
        if (own is null && first is not null)
        {
            Circuit.Resistor(wiring.TerminalOf(first, "+")!.Index, node, through.Value);
        }
        else
        {
            var volts = own ?? (Defaults.EngineRuns(state) ? Defaults.Running(wiring) : wiring.Spec.Job.Vehicle.Rest?.Value ?? new Volts(12.6));
            Circuit.Source(node, wiring.Body.Index, volts.Value, through.Value);
        }
    }

    /// <summary>The vehicle's own alternator, where the spec has none among its gear, behind its factory lead.</summary>
    private void AddVehicle()
    {
        if (first is null || !Defaults.EngineRuns(state) || wiring.Gear.Any(g => g is Alternator))
        {
            return;
        }

        var node = Circuit.NewNode();
        Circuit.Resistor(node, wiring.TerminalOf(first, "+")!.Index, Defaults.FactoryLead.Value);
        AddRegulated("(alternator)", (node, wiring.Body.Index), Defaults.Running(wiring), Defaults.Output(wiring, null, state));
    }
}
