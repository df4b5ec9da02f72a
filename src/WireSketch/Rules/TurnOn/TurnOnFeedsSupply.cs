using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.TurnOn;

/// <summary>A control output that feeds a device's supply.</summary>
internal sealed class TurnOnFeedsSupply : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "turn-on/feeds-supply",
        Severity.Error,
        Title: "A control output feeds a supply terminal",
        Why: """
            A remote output tells a device to wake; it cannot feed it. A fan, lamp or processor on it draws more than the output gives,
            and takes everything else down with it. Let the output wake a relay, and feed the device through that from a fuse.
            """,
        new Basis.Reasoning("the draw of the device against what a control output gives"),
        Bad: """
            gear:
              radio: { is: head unit, origin: factory, remote-limit: 0.5 A }
              fan: { is: motor, current: 1.5 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              R1: { from: radio.remote, to: fan.+, wire: 18 AWG blue, length: 12 ft } #! turn-on/feeds-supply
              G1: { from: fan.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              ignition: { is: ignition source, origin: factory, live: accessory, limit: 5 A }
              fan: { is: motor, current: 1.5 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: ignition, to: fan.+, wire: 18 AWG red, length: 3 ft, fuse: { rating: 3 A, at: 4 in }, tap: true }
              G1: { from: fan.-, to: bolt, wire: 18 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var run in install.Wiring.Runs)
        {
            var source = run.From.Concat(run.To)
                .SelectMany(e => e.Nodes)
                .FirstOrDefault(t => t is { Role: TerminalRole.Control, Shape.Flow: TerminalFlow.Out });
            if (source is null)
            {
                continue;
            }

            foreach (var end in run.From.Concat(run.To))
            {
                if (end.Gear.PowerInputs.FirstOrDefault(p => !p.IsOptional) is { } input
                    && end.Nodes.FirstOrDefault(t => t.Shape == input.Plus) is { } fed)
                {
                    var draws = input.Takes is ApplianceDraw { Current: { } amps } ? FindingText.Of($", which draws {amps:measured}")
                        : input.Takes is ApplianceDraw { Power: { } watts } ? FindingText.Of($", which takes {watts:measured}")
                        : FindingText.None;
                    yield return Report(
                        end.At,
                        $"{run.Id} feeds {fed.Id} from {source.Id}{draws}: a control output only wakes",
                        $"feed {fed.Id} through a relay that {source.Id} wakes, from a fuse of its own",
                        run.Id,
                        end.Gear.Id,
                        source.Id);
                }
            }
        }
    }

}
