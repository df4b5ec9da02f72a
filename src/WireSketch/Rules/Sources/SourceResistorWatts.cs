using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;

namespace WireSketch.Rules.Sources;

/// <summary>A load resistor that burns.</summary>
internal sealed class SourceResistorWatts : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "source/resistor-watts",
        Severity.Error,
        Title: "A load resistor gets more power than it takes",
        Why: """
            A resistor across a speaker output turns all of V²/R into heat. Above its rating it burns what it lies on; above half of it, it
            gets too hot to touch behind a dash without air. Fix it to metal, away from harness and trim.
            """,
        new Basis.Reasoning(
            $"power is the square of the source's highest voltage over the resistance; half of the rating as the limit for a warning is "
                + $"common practice, no published source"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } },
                       behavior: { mutes-without-load: 60 ohm } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V }
              loads: { is: load resistor, channels: 2, across: radio.front, resistance: 20 ohm, handles: 3 W } #! source/resistor-watts
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: speaker, channels: 2, maximum: 9 V } },
                       behavior: { mutes-without-load: 60 ohm } }
              adapter: { is: level adapter, channels: 2, output: 4.5 V }
              loads: { is: load resistor, channels: 2, across: radio.front, resistance: 47 ohm, handles: 10 W }
              amp: { is: amplifier, origin: existing, wakes-on: [remote, dc offset], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              T1: { from: radio.front, to: adapter.in, wire: 18 AWG, length: 8 in, tap: true }
              L1: { from: adapter.out, to: amp.in, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    private const double Safe = 0.5;

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from resistor in install.Wiring.Gear.OfType<LoadResistor>()
        where resistor is { Resistance.Value.Value: > 0, Handles.Value.Value: > 0 }
        let volts = SourceLoads.VoltsAt(install, resistor)
        where volts is not null
        let ohms = resistor.Resistance!.Value.Value
        let power = new Watts(volts.Value.Value * volts.Value.Value / ohms.Value)
        let handles = resistor.Handles!.Value.Value
        where power > handles * Safe
        select Report(
            resistor.Name.At,
            $"{resistor.Id} turns {power:measured} into heat at {volts} across {ohms}; it is rated for "
                + $"{handles:limit}{(power > handles ? "" : ", and should stay below half of that")}",
            $"use one rated for {new Watts(Math.Ceiling(power.Value / Safe))} or more, or a higher resistance that the source still "
                + $"accepts",
            power > handles ? Severity.Error : Severity.Warning,
            resistor.Id);

}
