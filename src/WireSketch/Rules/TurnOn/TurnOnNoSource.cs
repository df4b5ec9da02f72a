using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>A control wire without a source.</summary>
internal sealed class TurnOnNoSource : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/no-source",
        Severity.Warning,
        Title: "A control wire comes from nowhere",
        Why: """
            The wire looks right on the car, and does nothing: its other end is on a terminal that gives no turn-on signal. A relay that it
            should pull in never does.
            """,
        new Basis.Reasoning("follows from the wiring"),
        Bad: """
            gear:
              relay: { is: relay, coil: 0.15 A, contact: 30 A }
              dash-switch: { is: switch, rating: 3 A, closed: [full output, music, idle] }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              C1: { from: dash-switch.out, to: relay.86, wire: 18 AWG gray, length: 2 ft } #! turn-on/no-source
              G1: { from: relay.85, to: bolt, wire: 18 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              ignition: { is: ignition source, origin: factory, live: ignition, limit: 10 A }
              relay: { is: relay, coil: 0.15 A, contact: 30 A }
              dash-switch: { is: switch, rating: 3 A, closed: [full output, music, idle] }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              C1: { from: ignition, to: dash-switch.in, wire: 18 AWG violet, length: 2 ft }
              C2: { from: dash-switch.out, to: relay.86, wire: 18 AWG gray, length: 2 ft }
              G1: { from: relay.85, to: bolt, wire: 18 AWG black, length: 10 in }
            """);

    /// <summary>Wires that a device does not need to wake; one that keeps it asleep is an error of its own.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var wake in install.Answers.Wakes.Where(w =>
            w is { HasControlWire: true, ControlSources.IsEmpty: true } && TurnOnStates.Of(install, w) == TurnOnState.Wakes))
        {
            var remote = TurnOnStates.RemoteOf(install.Wiring, wake.Gear);
            if (ControlWires.RunAt(install.Wiring, remote) is { } run)
            {
                yield return Of(run, remote, "it wakes otherwise, so take the wire out, or bring it to a remote output");
            }
        }

        foreach (var (relay, ends) in ControlWires.Coils(install.Wiring))
        {
            if (ControlWires.RunAt(install.Wiring, ends.Plus) is { } run
                && ControlWires.Sources(install, ends.Plus).IsEmpty
                && ControlWires.Sources(install, ends.Minus).IsEmpty)
            {
                yield return Of(run, ends.Plus, "bring it to what shall pull the relay in") with
                {
                    Severity = ControlWires.IsNeeded(install.Wiring, relay) ? Severity.Error : Severity.Warning
                };
            }
        }
    }

    private Finding Of(WiredRun run, Terminal at, string help) =>
        Report(
            SignalFeeds.EndAt(run, at.Gear!),
            $"{run.Id} brings nothing to {at.Id}: nothing that it leads to gives a turn-on signal",
            help,
            run.Id,
            at.Gear!.Id);
}
