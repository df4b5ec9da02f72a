using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>A device woken by the starter's circuit.</summary>
internal sealed class TurnOnStartCircuit : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/start-circuit",
        Severity.Error,
        Title: "The device is woken by the starter's circuit",
        Why: """
            That circuit is live only while the starter turns: the device wakes for a second and sleeps again. Taking current from it can
            also keep an engine from starting. Use a circuit that is live with the key on accessory or on.
            """,
        new Basis.Reasoning("a start circuit is live only while cranking"),
        Bad: """
            gear:
              key: { is: ignition source, origin: factory, live: start }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], channels: { sub: { minimum: 4 ohm } } }
            runs:
              R1: { from: key, to: amp.remote, wire: 18 AWG red, length: 6 ft, tap: true } #! turn-on/start-circuit
            """,
        Good: """
            gear:
              key: { is: ignition source, origin: factory, live: accessory }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], channels: { sub: { minimum: 4 ohm } } }
            runs:
              R1: { from: key, to: amp.remote, wire: 18 AWG red, length: 6 ft, tap: true }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from woken in install.Answers.Wakes.Select(w => (w.Gear, Sources: w.ControlSources)).Concat(Radios(install))
        where woken.Sources.Length == 1
        let source = woken.Sources[0]
        where install.Wiring.SourceAt(source)?.Source is VehicleCircuit { IsStartCircuit: true }
        let run = install.Wiring.ConductorsAt[source.Index].Select(c => install.Wiring.RunsById[c.RunId]).FirstOrDefault()
        select Report(
            run?.Run.From[0].At ?? source.Gear!.Name.At,
            $"{woken.Gear.Id} is awake only while the starter turns: {source.Id} is a start circuit",
            "wake it from a circuit with live: accessory or ignition", woken.Gear.Id, source.Id, run?.Id ?? source.Id);

    /// <summary>Radios with what their accessory wires come from.</summary>
    private static IEnumerable<(Gear Gear, ImmutableArray<Terminal> Sources)> Radios(InstalledSystem install) =>
        from radio in ControlWires.Switched(install.Wiring)
        select (radio.Gear, ControlWires.Sources(install, radio.Accessory));
}
