using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.TurnOn;

/// <summary>An amplifier that wakes before the processor that feeds it.</summary>
internal sealed class TurnOnBeforeProcessor : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/before-processor",
        Severity.Advice,
        Title: "An amplifier wakes before the processor that feeds it",
        Why: """
            A processor takes seconds to start and may thump on its outputs while it does. An amplifier on the same control wire is awake
            by then and plays it. Wake the amplifier from the processor's own remote output, which waits until it is ready.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { channels: 2, maximum: 4 V } } }
              processor: { is: processor, origin: existing, inputs: { in: { channels: 2, maximum: 5 V } },
                           outputs: { sub: { channels: 2, maximum: 5 V } }, wakes-on: [remote] }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], channels: { sub: { minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
              L1: { from: radio.front, to: processor.in, wire: line pair, length: 9 ft }
              L2: { from: processor.sub, to: amp.in, wire: line pair, length: 3 ft }
              R1: { from: radio.remote, to: [processor.remote-in, amp.remote], wire: 18 AWG blue, length: 9 ft, #! turn-on/before-processor
                    link: 2 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { channels: 2, maximum: 4 V } } }
              processor: { is: processor, origin: existing, inputs: { in: { channels: 2, maximum: 5 V } },
                           outputs: { sub: { channels: 2, maximum: 5 V } }, wakes-on: [remote] }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], channels: { sub: { minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
              L1: { from: radio.front, to: processor.in, wire: line pair, length: 9 ft }
              L2: { from: processor.sub, to: amp.in, wire: line pair, length: 3 ft }
              R1: { from: radio.remote, to: processor.remote-in, wire: 18 AWG blue, length: 9 ft }
              R2: { from: processor.remote-out, to: amp.remote, wire: 18 AWG blue, length: 2 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var wake in install.Answers.Wakes.Where(w =>
            SignalRoles.Amplifies(w.Gear)
                && w.HasControlWire
                && w.ControlSources.Length == 1
                && !SignalRoles.PassesTurnOnOn(w.ControlSources[0].Gear)))
        {
            var processor = install.Answers.Signals.Where(s => ReferenceEquals(s.Gear, wake.Gear))
                .Select(s => SignalFeeds.SourceOf(install, s).Gear)
                .FirstOrDefault(SignalRoles.PassesTurnOnOn);
            if (processor is not null)
            {
                yield return Report(
                    ControlWires.RunAt(install.Wiring, TurnOnStates.RemoteOf(install.Wiring, wake.Gear)) is { } run
                        ? SignalFeeds.EndAt(run, wake.Gear)
                        : wake.Gear.Name.At,
                    $"{wake.ControlSources[0].Id} wakes {wake.Gear.Id} by itself, before {processor.Id}, which feeds it, is ready",
                    $"wake it from {install.Wiring.At(processor, processor.TurnOnOutputs[0].Terminal).Id}", wake.Gear.Id, processor.Id);
            }
        }
    }
}
