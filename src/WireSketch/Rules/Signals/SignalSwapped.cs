using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;

namespace WireSketch.Rules.Signals;

/// <summary>Left that feeds right.</summary>
internal sealed class SignalSwapped : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "signal/swapped",
        Severity.Warning,
        Title: "Left and right are swapped",
        Why: """
            Swapped sides put the singer on the wrong side, and a time alignment on the wrong ear. It happens at the cable ends behind the
            dash, and where a driver is wired to the channel of the other side.
            """,
        new Basis.Reasoning("sides by the names of terminals and drivers: left, right, fl, fr, rl, rr"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front.left, to: amp.in.right, wire: line pair, length: 9 ft } #! signal/swapped
              L2: { from: radio.front.right, to: amp.in.left, wire: line pair, length: 9 ft } #! signal/swapped
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, outputs: { front: { level: line, channels: 2, maximum: 4 V } } }
              amp: { is: amplifier, origin: existing, input: { line: 0.2 V to 6 V },
                     channels: { left: { power: { 4 ohm: 50 W }, minimum: 4 ohm }, right: { power: { 4 ohm: 50 W }, minimum: 4 ohm } } }
              left: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
              right: { is: speaker, band: full range, coils: 4 ohm, handles: 80 W }
            runs:
              L1: { from: radio.front.left, to: amp.in.left, wire: line pair, length: 9 ft }
              L2: { from: radio.front.right, to: amp.in.right, wire: line pair, length: 9 ft }
              S1: { from: amp.left, to: left, wire: 14 AWG, length: 9 ft }
              S2: { from: amp.right, to: right, wire: 14 AWG, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) => Inputs(install).Concat(Loads(install));

    /// <summary>An output that feeds both sides of a device is meant to.</summary>
    private IEnumerable<Finding> Inputs(InstalledSystem install) =>
        from device in install.Answers.Signals.Where(s => s.FedBy is not null && !s.Loops).GroupBy(s => s.Gear.Id)
        from signal in device
        let source = SideOf(signal.FedBy!)
        let to = SideOf(signal.Input)
        where source is not null
            && to is not null
            && source != to
            && !SignalRoles.AmplifiesOneChannel(signal.Gear)
            && !device.Any(s => s.FedBy == signal.FedBy && SideOf(s.Input) == source)
        select Report(
            SignalFeeds.PlaceOf(install.Wiring, signal),
            $"{signal.FedBy} feeds {SignalFeeds.Name(signal)}",
            $"bring {signal.FedBy} to the {source} input, and the other to this one",
            SignalFeeds.RunOf(install.Wiring, signal)?.Id ?? signal.Gear.Id, signal.Gear.Id);

    private IEnumerable<Finding> Loads(InstalledSystem install) =>
        from channel in install.Answers.Channels
        where channel is { BridgedWith: null, Fault: LoadFault.None }
        let side = SideOf(channel.Channel)
        where side is not null
        from driver in ChannelWiring.Drivers(channel)
        let of = SideOf(driver.Speaker.Id)
        where of is not null && of != side
        select Report(
            ChannelWiring.PlaceOf(install.Wiring, channel),
            $"{channel.Id} drives {driver.Speaker.Id}",
            $"bring {driver.Speaker.Id} to a channel of the {of} side, or rename what is named wrongly",
            [channel.Id, .. ChannelWiring.Subjects(install.Wiring, channel)]);

    /// <summary>left or right, by the words of a name; null if it says neither, or both.</summary>
    private static string? SideOf(string name)
    {
        var words = name.Split('.', '-', '_');
        var left = words.Any(w => w is "left" or "fl" or "rl" or "l");
        var right = words.Any(w => w is "right" or "fr" or "rr" or "r");
        return left == right ? null : left ? "left" : "right";
    }
}
