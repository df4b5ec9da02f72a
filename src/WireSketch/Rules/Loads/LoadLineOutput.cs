using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Loads;

/// <summary>A line output wired to a speaker.</summary>
internal sealed class LoadLineOutput : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "load/line-output",
        Severity.Error,
        Title: "A line output is wired to a speaker",
        Why: """
            A line output gives milliamperes into thousands of ohms. A speaker on it plays nothing worth hearing and may take the output
            with it. Bring the line to an amplifier, and the amplifier to the speaker.
            """,
        new Basis.Reasoning("the kind of the output as the spec has it: only speaker outputs give power"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { rear: { level: line, channels: 2, maximum: 4 V } } }
              left: { is: speaker, coils: 4 ohm, handles: 60 W }
            runs:
              S1: { from: radio.rear.left, to: left, wire: 16 AWG, length: 9 ft } #! load/line-output
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { rear: { level: speaker, channels: 2, maximum: 9 V } } }
              left: { is: speaker, coils: 4 ohm, handles: 60 W }
            runs:
              S1: { from: radio.rear.left, to: left, wire: 16 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from run in install.Wiring.Runs
        let ends = run.From.Concat(run.To).ToArray()
        let line = Array.Find(ends, e => e.Shape is { Role: TerminalRole.Line, Flow: TerminalFlow.Out })
        let speaker = Array.Find(ends, e => e.Gear.SpeakerParts.Any(p => p is VoiceCoil or CrossoverWay))
        where line is not null && speaker is not null
        select Report(
            line.At, $"{line.Id} is a line output, and {run.Id} brings it to {speaker.Id}: it cannot drive a speaker",
            $"bring {line.Id} to an amplifier, and a channel of that to {speaker.Gear.Id}", run.Id, line.Gear.Id, speaker.Gear.Id);
}
