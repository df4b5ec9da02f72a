using WireSketch.Electrical.Conductors;
using WireSketch.Electrical.Energy;
using WireSketch.Electrical.Solver;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
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
    private readonly SourceTerminals? starter;
    private readonly IReadOnlyCollection<ContactCoil> driven;
    private readonly IReadOnlyCollection<ContactCoil> pulledIn;

    /// <param name="wiring">The wiring.</param>
    /// <param name="state">The state.</param>
    /// <param name="temperatures">Of every conductor, by its index.</param>
    /// <param name="pulledIn">Of the coils with both ends wired, those that are pulled in; null to let all contacts go by the state
    /// alone.</param>
    public SupplyCircuit(
        Wiring wiring,
        SystemState state,
        IReadOnlyList<Celsius> temperatures,
        IReadOnlyCollection<ContactCoil>? pulledIn = null)
    {
        driven = pulledIn is null ? [] : Relays.Driven(wiring);
        this.pulledIn = pulledIn ?? [];
        this.wiring = wiring;
        this.state = state;
        starter = wiring.Starter;
        Circuit = new(wiring.Terminals.Length);
        ConductorBranch = new int[wiring.Conductors.Length];
        LinkBranch = new int[wiring.Links.Length];
        foreach (var c in wiring.Conductors)
        {
            ConductorBranch[c.Index] = Carries(c)
                ? Circuit.Resistor(c.From.Index, c.To.Index, ConductorProperties.At(c, temperatures[c.Index]).Value)
                : -1;
        }

        foreach (var link in wiring.Links)
        {
            LinkBranch[link.Index] = Close(link);
        }

        foreach (var gear in wiring.Gear)
        {
            foreach (var source in wiring.Sources.Where(s => ReferenceEquals(s.Gear, gear)))
            {
                AddSource(source);
            }

            foreach (var output in state == SystemState.Standby ? [] : gear.TurnOnOutputs)
            {
                Switch(wiring.At(gear, output.Terminal), wiring.At(gear, output.FedFrom));
            }
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
    public void AddLoads(Func<LoadPath, SystemState, LoadModel> drawOf)
    {
        foreach (var path in wiring.Loads)
        {
            var draw = drawOf(path, state);
            if (path.IsTakenAsWired)
            {
                Loads.Add((path, -1, draw));
                continue;
            }

            if (path.HasReturn && path.Return.IsEmpty && path.Minus != wiring.Body)
            {
                Circuit.Resistor(path.Minus.Index, wiring.Body.Index, Assume.FactoryLead.Value.Value);
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

        if (starter is not null && Defaults.EngineRuns(state))
        {
            Circuit.Current(starter.Plus.Index, wiring.Body.Index, Defaults.BaseLoad(wiring).Value, 1);
        }
    }

    private void AddRemote(LoadPath path)
    {
        foreach (var input in path.Gear.TurnOnInputs)
        {
            var remote = wiring.At(path.Gear, input.Terminal);
            if (wiring.IsWired(remote))
            {
                Circuit.Current(remote.Index, path.Minus.Index, (input.Current?.Value ?? Assume.Remote.Value).Value, 1);
            }
        }
    }

    private int Close(InternalConnection link)
    {
        if (!Relays.IsClosed(link, state, driven, pulledIn) || link.A.Role is TerminalRole.Speaker or TerminalRole.Line)
        {
            return -1;
        }

        var (a, b) = (link.A.Index, link.B.Index);
        var ohms = ConnectionProperties.Of(link).Ohms.Value;
        return link.Kind == ConnectionKind.Diode
            ? Circuit.Diode(a, b, (link.Drop ?? Assume.DiodeDrop.Value).Value, ohms)
            : Circuit.Resistor(a, b, ohms);
    }

    private void AddSource(SourceTerminals at)
    {
        switch (at.Source)
        {
            case BatterySource b:
                var (plus, minus) = Poles(at);
                var branch = Circuit.Battery(
                    plus, minus, Defaults.Rest(wiring, b).Value, Defaults.Internal(b).Value, Defaults.Charging(b).Value);
                Sources.Add((at.Gear.Id, branch, plus, minus, double.PositiveInfinity));
                break;
            case AlternatorSource a when a.LiveIn.Contains(state):
                AddRegulated(at.Gear.Id, Poles(at), Defaults.Regulated(wiring, a), Defaults.Output(wiring, a, state));
                break;

            // Beside a battery a charger counts while the engine runs; what it brings over a day with the engine off stands in the energy
            // balance.
            case ChargerSource c when starter is null || Defaults.EngineRuns(state):
                AddRegulated(at.Gear.Id, Poles(at), c.Voltage?.Value ?? Assume.Running.Value, c.Current?.Value);
                break;
            case VehicleCircuit v when v.LiveIn.Contains(state):
                Feed(at.Plus.Index, v.Voltage?.Value, Assume.FactoryCircuit.Value);
                break;
        }
    }

    private static (int Plus, int Minus) Poles(SourceTerminals at) => (at.Plus.Index, at.Minus!.Index);

    private void AddRegulated(string id, (int Plus, int Minus) poles, Volts volts, Amps? limit)
    {
        var most = limit?.Value ?? double.PositiveInfinity;
        Sources.Add(
            (
                id,
                Circuit.Regulated(poles.Plus, poles.Minus, volts.Value, Assume.Regulator.Value.Value, most),
                poles.Plus,
                poles.Minus,
                most));
    }

    /// <summary>
    /// A remote output takes its volts from the device's supply; where that is taken for granted, from the first battery.
    /// </summary>
    private void Switch(Terminal output, Terminal supply)
    {
        if (!wiring.IsWired(output))
        {
            return;
        }

        if (wiring.IsWired(supply))
        {
            Circuit.Resistor(supply.Index, output.Index, Assume.RemoteSwitch.Value.Value);
        }
        else
        {
            Feed(output.Index, null, Assume.RemoteSwitch.Value);
        }
    }

    /// <summary>A vehicle circuit: from the first battery, or by itself if it states its volts or there is no battery.</summary>
    private void Feed(int node, Volts? own, Ohms through)
    {
        if (own is null && starter is not null)
        {
            Circuit.Resistor(starter.Plus.Index, node, through.Value);
        }
        else
        {
            var volts = own ?? (Defaults.EngineRuns(state) ? Defaults.Running(wiring) : Defaults.Rest(wiring));
            Circuit.Source(node, wiring.Body.Index, volts.Value, through.Value);
        }
    }

    /// <summary>The vehicle's own alternator, where the spec has none among its gear, behind its factory lead.</summary>
    private void AddVehicle()
    {
        if (starter is null || !Defaults.EngineRuns(state) || wiring.Sources.Any(s => s.Source is AlternatorSource))
        {
            return;
        }

        var node = Circuit.NewNode();
        Circuit.Resistor(node, starter.Plus.Index, Assume.FactoryLead.Value.Value);
        AddRegulated("(alternator)", (node, wiring.Body.Index), Defaults.Running(wiring), Defaults.Output(wiring, null, state));
    }
}
