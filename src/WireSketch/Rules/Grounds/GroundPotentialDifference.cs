using WireSketch.Diagnostics;
using WireSketch.Electrical;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>Devices of one signal chain whose grounds are not at one voltage.</summary>
internal sealed class GroundPotentialDifference : Rule
{
    /// <summary>From here on it is likely to be heard, whatever the inputs reject (common practice, no published source).</summary>
    private static readonly Volts Loud = new(0.100);

    public override RuleCard Card { get; } = new(
        Id: "ground/potential-difference",
        Severity.Warning,
        Title: "Devices of one signal chain are grounded far apart",
        Why: """
            The volts between the grounds of two devices lie in series with the signal between them. They follow the supply current: the
            whine of the alternator, the click of the pump. Ground both at one point, or with enough copper that little is left between.
            From 10 mV on it is an advice, from 100 mV on a warning. The millivolts of the body itself rest on 1 mohm between any two
            points.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah, internal: 5 mohm }
              radio: { is: head unit, outputs: { rear: { level: line, channels: 2, maximum: 2 V } } }
              amp:
                is: amplifier
                supply: { fuse: 60 A }
                wakes-on: [remote]
                input: { line: 0.1 V to 5 V }
                channels: { sub: { power: { 4 ohm: 400 W }, minimum: 4 ohm } }
                settings: { low-pass: 80 Hz }
              sub: { is: subwoofer, coils: 4 ohm, handles: 500 W }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 70 A, 2: 10 A } }
              dash-bolt: { is: chassis point, surface: bare metal }
              rear-bolt: { is: chassis point, surface: bare metal }
              ignition: { is: ignition source, origin: factory, live: accessory }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 1/0 AWG red, length: 4 ft, fuse: { rating: 150 A, at: 8 in } }
              P2: { from: fuses.out.1, to: amp.+, wire: 4 AWG red, length: 6 ft }
              P3: { from: fuses.out.2, to: radio.battery, wire: 12 AWG yellow, length: 2 ft }
              C1: { from: ignition, to: radio.accessory, wire: 18 AWG red, length: 2 ft, tap: true }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue/white, length: 12 ft }
              G1: { from: radio.-, to: dash-bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: amp.-, to: rear-bolt, wire: 4 AWG black, length: 17 in } #! ground/potential-difference
              L1: { from: radio.rear, to: amp.in, wire: line pair, length: 12 ft }
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 6 ft }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah, internal: 5 mohm }
              radio: { is: head unit, outputs: { rear: { level: line, channels: 2, maximum: 2 V } } }
              amp:
                is: amplifier
                supply: { fuse: 10 A, current: 6 A }
                wakes-on: [remote]
                input: { line: 0.1 V to 5 V }
                channels: { sub: { power: { 4 ohm: 50 W }, minimum: 4 ohm } }
                settings: { low-pass: 80 Hz }
              sub: { is: subwoofer, coils: 4 ohm, handles: 100 W }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 10 A, 2: 10 A }, style: blade }
              dash-bolt: { is: chassis point, surface: bare metal }
              ignition: { is: ignition source, origin: factory, live: accessory }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 4 ft, fuse: { rating: 40 A, at: 8 in } }
              P2: { from: fuses.out.1, to: amp.+, wire: 8 AWG red, length: 6 ft }
              P3: { from: fuses.out.2, to: radio.battery, wire: 12 AWG yellow, length: 2 ft }
              C1: { from: ignition, to: radio.accessory, wire: 18 AWG red, length: 2 ft, tap: true }
              R1: { from: radio.remote, to: amp.remote, wire: 18 AWG blue/white, length: 12 ft }
              G1: { from: radio.-, to: dash-bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: amp.-, to: dash-bolt, wire: 8 AWG black, length: 12 in }
              L1: { from: radio.rear, to: amp.in, wire: line pair, length: 12 ft }
              S1: { from: amp.sub, to: sub, wire: 12 AWG, length: 6 ft }
            """);

    /// <summary>One finding for two points: the pair of devices with most volts between them.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var state = install.Answers.State(SystemState.FullOutput);
        if (!state.IsSolved || install.IsShorted)
        {
            return [];
        }

        return from pair in install.GroundPairs
               let between = GroundPairs.Between(state, pair.From, pair.To)
               where between > GroundPairs.Limit
               group (pair.From, pair.To, between) by (GroundPaths.PointOf(pair.From)!.Id, GroundPaths.PointOf(pair.To)!.Id) into ofPoints
               select Of(install, state, ofPoints.MaxBy(x => x.between.Value));
    }

    /// <summary>The ground lead that lies higher above the body: the one to mend.</summary>
    private static string Lead(LoadPath a, LoadPath b, StateResult state)
    {
        var higher = Math.Abs(state.Volts[a.Minus.Index]?.Value ?? 0) > Math.Abs(state.Volts[b.Minus.Index]?.Value ?? 0) ? a : b;
        return higher.Return.Select(s => s.Conductor).OfType<Conductor>().First().RunId;
    }

    private Finding Of(InstalledSystem install, StateResult state, (LoadPath From, LoadPath To, Volts Between) worst)
    {
        var lead = Lead(worst.From, worst.To, state);
        var run = install.Wiring.RunsById[lead];
        var (from, to) = (worst.From, worst.To);
        return Report(
            run.Run.Name.At,
            $"{to.Gear.Id} is grounded at {GroundPaths.PointOf(to)!.Id} and {from.Gear.Id}, which feeds it, at "
                + $"{GroundPaths.PointOf(from)!.Id}: {worst.Between:measured} lies between them "
                + $"{RunText.InState(SystemState.FullOutput)}, {(worst.Between > Loud ? Loud : GroundPairs.Limit):limit} is the most",
            $"ground both at one point, or make {lead} thicker and shorter",
            worst.Between > Loud ? Severity.Warning : Severity.Advice, lead, to.Gear.Id, from.Gear.Id);
    }
}
