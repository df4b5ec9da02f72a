using WireSketch.Diagnostics;
using WireSketch.Electrical.Energy;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>Nothing, or only a fuse, says what an amplifier takes.</summary>
internal sealed class SupplyDemandUnknown : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/demand-unknown",
        Severity.Warning,
        Title: "Nobody says what the amplifier takes",
        Why: """
            Cable, fuse and alternator are judged by what the devices take. An amplifier tells it by the power of its channels, by the
            current its maker states, or at least by its own fuse, which bounds it. With none of the three nothing can be judged, and auto
            would choose the thinnest cable there is.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              amp: { is: amplifier, wakes-on: [remote], channels: { sub: { minimum: 2 ohm } } } #! supply/demand-unknown
              ignition: { is: ignition source, live: accessory }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 10 ft, fuse: { rating: 60 A, at: 8 in } }
              R1: { from: ignition, to: amp.remote, wire: 18 AWG blue, length: 6 ft, tap: true }
              G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              amp: { is: amplifier, wakes-on: [remote], supply: { current: 36 A }, channels: { sub: { minimum: 2 ohm } } }
              ignition: { is: ignition source, live: accessory }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 10 ft, fuse: { rating: 60 A, at: 8 in } }
              R1: { from: ignition, to: amp.remote, wire: 18 AWG blue, length: 6 ft, tap: true }
              G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        foreach (var path in install.Wiring.Loads.Where(l => !l.Gear.InVehicle && install.Wiring.IsWired(l.Plus)))
        {
            if (path is not { Gear: var amplifier, Input.Takes: OutputDraw takes })
            {
                continue;
            }

            var output = ChannelOutput.Of(amplifier, install.Answers.Channels);
            if (LoadModels.IsUnknown(takes, output))
            {
                yield return Report(
                    amplifier.Name.At,
                    $"nothing says what {amplifier.Id} takes: no power for its loads, no current, no fuse of its own; it counts as "
                        + $"little, and what feeds it is not judged",
                    "write power: by load for its channels, or supply: { current: } or { fuse: } from its papers", amplifier.Id);
            }
            else if (LoadModels.BoundingFuse(takes, output) is { } fuse)
            {
                yield return Report(
                    fuse.At,
                    $"no power is stated for the loads of {amplifier.Id}: what its own fuse lets through, {fuse:own fuse}, is taken for it",
                    "write power: by load for its channels, or supply: { current: } from its papers", Severity.Advice, amplifier.Id);
            }
        }
    }
}
