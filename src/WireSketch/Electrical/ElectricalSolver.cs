using System.Collections.Immutable;
using WireSketch.Electrical.Conductors;
using WireSketch.Electrical.Energy;
using WireSketch.Electrical.Faults;
using WireSketch.Electrical.OperatingPoints;
using WireSketch.Electrical.Signals;
using WireSketch.Electrical.Speakers;
using WireSketch.Electrical.TurnOn;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Electrical;

/// <summary>Turns a wiring into volts, amps, ohms and watts.</summary>
public static class ElectricalSolver
{
    /// <summary>
    /// Computes everything that is known about a wiring. What cannot be computed is said in the answers; rules make findings of it.
    /// </summary>
    public static ElectricalResults Solve(Wiring wiring)
    {
        var facts = new ConductorProperties(wiring);
        var channels = new ChannelLoads(wiring, c => ConductorProperties.At(c, facts.AmbientOf(c))).Find();
        var outputs = wiring.Loads.Select(l => l.Gear)
            .Distinct()
            .ToDictionary(g => g.Id, g => ChannelOutput.Of(g, channels), StringComparer.Ordinal);
        var point = new OperatingPoint(wiring, facts, (path, state) => LoadModels.Of(path.Input.Takes, state, outputs[path.Gear.Id]));
        var states = SystemStates.All.Select(point.Solve).ToImmutableArray();
        var full = states.First(s => s.State == SystemState.FullOutput);
        var signals = new SignalChains(wiring).Solve();
        var wakes = new TurnOnPaths(wiring, signals);
        return new()
        {
            States = states,
            Conductors = [.. wiring.Conductors.Select(c => facts.Answer(c, full.Amps[c.Index]))],
            Faults = new FaultFinder(wiring, full.Temperatures).Find(),
            Channels = channels,
            Signals = signals,
            Wakes = wakes.Solve(),
            Energy = new EnergyBalance(wiring, states).Solve(wakes.ControlLoads()),
        };
    }
}
