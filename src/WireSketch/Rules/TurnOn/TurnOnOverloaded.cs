using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.TurnOn;

/// <summary>A turn-on source that feeds too much.</summary>
internal sealed class TurnOnOverloaded : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/overloaded",
        Severity.Warning,
        Title: "More is asked of a remote output than it gives",
        Why: """
            A remote output is made for a few milliamperes per amplifier. Fans, lamps, relays and many amplifiers together pull it down, or
            burn it, and the radio with it. Let it switch a relay, and the relay feed the rest. Where no limit is written, 0.5 A is taken.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, remote-limit: 100 mA }
              front: { is: amplifier, origin: existing, wakes-on: [remote], remote-current: 80 mA,
                       channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
              rear: { is: amplifier, origin: existing, wakes-on: [remote], remote-current: 80 mA,
                      channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
            runs:
              R1: { from: radio.remote, to: [front.remote, rear.remote], wire: 18 AWG blue, length: 9 ft } #! turn-on/overloaded
            """,
        Good: """
            gear:
              radio: { is: head unit, origin: factory, remote-limit: 200 mA }
              front: { is: amplifier, origin: existing, wakes-on: [remote], remote-current: 80 mA,
                       channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
              rear: { is: amplifier, origin: existing, wakes-on: [remote], remote-current: 80 mA,
                      channels: { sub: { power: { 4 ohm: 250 W }, minimum: 4 ohm } } }
            runs:
              R1: { from: radio.remote, to: [front.remote, rear.remote], wire: 18 AWG blue, length: 9 ft }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from load in install.Answers.Energy.ControlLoads
        where load.Amps > load.Limit * (1 + 1e-6)
        let run = ControlWires.RunAt(install.Wiring, load.Source)
        select Report(
            run?.Run.Name.At ?? load.Source.Gear!.Name.At,
            $"{load.Source.Id} has to give {load.Amps:measured} to wake what is wired to it; {load.Limit:limit} is "
                + $"{(load.LimitIsAssumed ? "taken as its limit, as none is written" : "its limit")}",
            "let it switch a relay that feeds the rest from a fused supply",
            load.Source.Gear!.Id, run?.Id ?? load.Source.Id);
}
