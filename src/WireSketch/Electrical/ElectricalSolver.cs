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
    /// <summary>Computes everything that is known about a wiring. What cannot be computed is said in the answers; rules make findings of it.</summary>
    public static ElectricalResults Solve(Wiring wiring)
    {
        var facts = new ConductorProperties(wiring);
        var channels = new ChannelLoads(wiring, c => ConductorProperties.At(c, facts.AmbientOf(c))).Find();
        var outputs = wiring.Loads.ToDictionary(l => l.Gear.Id, l => ChannelOutput.Of(l.Gear, channels), StringComparer.Ordinal);
        var point = new OperatingPoint(wiring, facts, (gear, state) => LoadModels.Of(gear, state, outputs[gear.Id]));
        var states = SystemStates.All.Select(point.Solve).ToImmutableArray();
        var full = states[(int)SystemState.FullOutput];
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
