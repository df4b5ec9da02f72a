using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Rules.TurnOn;

/// <summary>A control wire with two sources.</summary>
internal sealed class TurnOnFedTwice : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/fed-twice",
        Severity.Warning,
        Title: "Two sources feed one control wire",
        Why: """
            Joined, each source feeds the other when one is on and the other off: the radio is held awake by the accessory circuit, or its
            remote output is burnt. Choose one; if either shall wake the device, use a relay or a diode in each.
            """,
        new Basis.Reasoning("two outputs on one piece of wire"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } }
              switched: { is: tap point, origin: factory, carries: accessory, limit: 5 A }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue, length: 9 ft }
              R2: { from: switched, to: amp.remote, wire: 18 AWG red, length: 9 ft } #! turn-on/fed-twice
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, wakes-on: [remote], input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } },
                     settings: { wake: remote } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front, to: amp.in, wire: line pair, length: 9 ft }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    /// <summary>Only what is joined by wire: through a switch, a relay or a diode two sources may wake one device.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from net in install.Wiring.Nets
        where net.Terminals.Any(TakesTurnOn)
        let sources = net.Terminals.Where(TerminalRoles.GivesTurnOn).ToArray()
        where sources.Length > 1 && sources.Any(s => s.Role == TerminalRole.Control || TerminalRoles.IsVehicleCircuit(s.Gear))
        let runs = sources.Select(s => ControlWires.RunAt(install.Wiring, s))
            .OfType<WiredRun>()
            .DistinctBy(r => r.Id)
            .OrderBy(r => install.Wiring.Runs.IndexOf(r))
            .ToArray()
        where runs.Length > 0
        select Report(
            runs[^1].Run.Name.At,
            $"{RunText.List(sources.Select(s => s.Id))} {(sources.Length == 2 ? "both" : "all")} feed "
                + $"{RunText.List(net.Terminals.Where(TakesTurnOn).Select(t => t.Id))}",
            "leave one of them, or put a relay or a diode between",
            [runs[^1].Id, .. runs.Select(r => r.Id), .. sources.Select(s => s.Gear!.Id)]);

    private static bool TakesTurnOn(Terminal t) => t is { Role: TerminalRole.Control, Shape.Flow: TerminalFlow.In };
}
