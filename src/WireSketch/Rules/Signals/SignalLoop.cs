using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>A chain that feeds itself.</summary>
internal sealed class SignalLoop : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/loop",
        Severity.Error,
        Title: "The signal comes back to where it started",
        Why: """
            A device whose output reaches its own input howls as soon as its gain is above one, and takes the speakers with it. An output
            was taken for an input.
            """,
        new Basis.Reasoning("follows from the wiring"),
        Bad: """
            gear:
              processor:
                is: processor
                origin: existing
                inputs: { in: { level: line, channels: 2, maximum: 6 V } }
                outputs: { out: { level: line, channels: 2, maximum: 4 V } }
            runs:
              L1: { from: processor.out, to: processor.in, wire: line pair, length: 2 ft } #! signal/loop
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              processor:
                is: processor
                origin: existing
                inputs: { in: { level: line, channels: 2, maximum: 6 V } }
                outputs: { out: { level: line, channels: 2, maximum: 4 V } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: processor.in, wire: line pair, length: 9 ft }
              L2: { from: processor.out, to: amp.in, wire: line pair, length: 2 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    /// <summary>One finding for a loop, at the first of its devices; a device behind a loop is not part of it.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var loops = install.Answers.Signals.Where(s => s.Loops)
            .Select(s =>
                (
                    Signal: s,
                    Names: s.Chain.Select(g => g.Id)
                        .Append(s.Gear.Id)
                        .Distinct(StringComparer.Ordinal)
                        .Order(StringComparer.Ordinal)
                        .ToArray()))
            .DistinctBy(x => string.Join(' ', x.Names)).ToArray();
        return from loop in loops
               where !Array.Exists(
                   loops,
                   other =>
                       other.Names.Length < loop.Names.Length
                           && Array.TrueForAll(other.Names, n => loop.Names.Contains(n, StringComparer.Ordinal)))
               select Report(
                   SignalFeeds.PlaceOf(install.Wiring, loop.Signal),
                   loop.Names.Length == 1
                       ? FindingText.Of($"the output of {loop.Names[0]} feeds its own input")
                       : $"the signal goes round in a circle: {string.Join(", ", loop.Names)} and back",
                   "take out the cable that leads back, and bring the source to that input",
                   loop.Names);
    }
}
