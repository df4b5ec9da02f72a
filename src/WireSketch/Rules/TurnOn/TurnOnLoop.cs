using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.TurnOn;

/// <summary>Turn-on wires that go round in a circle.</summary>
internal sealed class TurnOnLoop : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/loop",
        Severity.Error,
        Title: "Devices wait for each other to wake",
        Why: """
            A remote output is live only while its own device is awake. If two devices wake each other, or one itself, neither ever starts.
            One of them needs a wire from the source.
            """,
        new Basis.Reasoning("follows from the wiring"),
        Bad: """
            gear:
              p: { is: processor, origin: existing, wakes-on: [remote], settings: { wake: remote } } #! turn-on/loop
            runs:
              R1: { from: p.remote-out, to: p.remote-in, wire: 18 AWG blue, length: 1 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              p: { is: processor, origin: existing, wakes-on: [remote], settings: { wake: remote } }
            runs:
              R1: { from: radio.remote, to: p.remote-in, wire: 18 AWG blue, length: 1 ft }
            """);

    /// <summary>One finding for a circle: devices whose every source, followed on, comes back.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var waits = install.Answers.Wakes
            .Where(w =>
                w is { By: WakeMode.Remote or WakeMode.Accessory }
                    && !w.ControlSources.IsEmpty
                    && w.ControlSources.All(t => SignalRoles.PassesTurnOnOn(t.Gear)))
            .ToDictionary(
                w => w.Gear.Id,
                w => w.ControlSources.Select(t => t.Gear!.Id).Distinct(StringComparer.Ordinal).ToArray(),
                StringComparer.Ordinal);
        var told = new HashSet<string>(StringComparer.Ordinal);
        foreach (var start in waits.Keys.Where(k => SignalRoles.PassesTurnOnOn(install.Wiring.GearById[k])))
        {
            var circle = Circle(waits, start);
            if (circle.Contains(start) && told.Add(string.Join(' ', circle.Order(StringComparer.Ordinal))))
            {
                yield return Report(
                    install.Wiring.GearById[start].Name.At,
                    circle.Count == 1
                        ? FindingText.Of($"{start} is to be woken by its own remote output")
                        : $"{RunText.List(circle)} wait for each other to wake",
                    $"run a wire from the source, or from an accessory circuit, to "
                        + $"{TurnOnStates.RemoteOf(install.Wiring, install.Wiring.GearById[start]).Id}",
                    [.. circle]);
            }
        }
    }

    /// <summary>What a device waits for, all of it; empty if something of it does not wait for another.</summary>
    private static List<string> Circle(Dictionary<string, string[]> waits, string start)
    {
        var all = new List<string>();
        var queue = new Queue<string>(waits[start]);
        while (queue.TryDequeue(out var next))
        {
            if (!waits.TryGetValue(next, out var further))
            {
                return [];
            }

            if (!all.Contains(next, StringComparer.Ordinal))
            {
                all.Add(next);
                foreach (var f in further)
                {
                    queue.Enqueue(f);
                }
            }
        }

        return all;
    }
}
