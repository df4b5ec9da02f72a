using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Signals;

/// <summary>Line outputs joined by a cable.</summary>
internal sealed class SignalOutputsJoined : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/outputs-joined",
        Severity.Warning,
        Title: "Two line outputs are joined",
        Why: """
            A Y-cable divides one output to two inputs; the other way round each output drives into the other, which clips early and mixes
            what should stay apart. An input for each, or a device that sums, does it properly.
            """,
        new Basis.Reasoning("two sources of voltage joined by wire drive current into each other"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { rear: { channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, channels: { sub: { minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
              L1: { from: radio.rear.left, to: amp.in.left, wire: line pair, length: 12 ft }
              L2: { from: radio.rear.right, to: amp.in.left, wire: line pair, length: 12 ft } #! signal/outputs-joined
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { rear: { channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, channels: { sub: { minimum: 4 ohm } } }
              sub: { is: subwoofer, coils: 4 ohm, handles: 250 W }
            runs:
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 9 ft }
              L1: { from: radio.rear.left, to: amp.in.left, wire: line pair, length: 12 ft }
              L2: { from: radio.rear.right, to: amp.in.right, wire: line pair, length: 12 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var net in install.Wiring.Nets)
        {
            var outputs = net.Terminals.Where(t => t is { Role: TerminalRole.Line, Shape.Flow: TerminalFlow.Out, Side: '+' }).ToArray();
            if (outputs.Length < 2)
            {
                continue;
            }

            var last = net.Terminals.SelectMany(t => install.Wiring.ConductorsAt[t.Index]).MaxBy(c => c.Index)!;
            var run = install.Wiring.RunsById[last.RunId];
            var names = outputs.Select(t => t.Id[..^2]).ToArray();
            yield return Report(
                run.To.FirstOrDefault(e => net.Terminals.Any(e.Nodes.Contains))?.At ?? run.Run.Name.At,
                $"{EnglishText.And(names)} are joined by {run.Id}: each drives into the other",
                "give each an input of its own, or sum them in a processor", [names[0], .. names.Skip(1), run.Id]);
        }
    }
}
