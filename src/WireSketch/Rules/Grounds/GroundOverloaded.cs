using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Grounds;

/// <summary>A ground that carries more than it may.</summary>
internal sealed class GroundOverloaded : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "ground/overloaded",
        Severity.Error,
        Title: "The ground carries more than it may",
        Why: """
            No fuse watches over a ground. Where several devices share one, the sum of their currents may be above what the wire carries,
            though each supply is rightly fused: then the ground is what burns.
            """,
        new Basis.Published(
            "33 CFR 183.425(b), Table 5 with its notes (allowable amperage of conductors); written for boats, taken here as good practice"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              pump-1: { is: pump, current: 24 A }
              pump-2: { is: pump, current: 24 A }
              pump-3: { is: pump, current: 24 A }
              ground: { is: ground block, studs: 6, rating: 100 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump-1.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P2: { from: battery.+, to: pump-2.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P3: { from: battery.+, to: pump-3.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              G1: { from: pump-1.-, to: ground, wire: 10 AWG black, length: 2 ft }
              G2: { from: pump-2.-, to: ground, wire: 10 AWG black, length: 2 ft }
              G3: { from: pump-3.-, to: ground, wire: 10 AWG black, length: 2 ft }
              G4: { from: ground, to: bolt, wire: 10 AWG black, length: 12 in } #! ground/overloaded
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 90 Ah }
              pump-1: { is: pump, current: 24 A }
              pump-2: { is: pump, current: 24 A }
              pump-3: { is: pump, current: 24 A }
              ground: { is: ground block, studs: 6, rating: 100 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump-1.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P2: { from: battery.+, to: pump-2.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P3: { from: battery.+, to: pump-3.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              G1: { from: pump-1.-, to: ground, wire: 10 AWG black, length: 2 ft }
              G2: { from: pump-2.-, to: ground, wire: 10 AWG black, length: 2 ft }
              G3: { from: pump-3.-, to: ground, wire: 10 AWG black, length: 2 ft }
              G4: { from: ground, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    /// <summary>Returns of loads only; a supply that carries too much is told by its fuse.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var returns = install.Wiring.Loads.Where(l => !l.ReturnsThroughShield)
            .SelectMany(l => l.Return.Select(s => s.Conductor))
            .OfType<Conductor>()
            .Select(c => c.Index)
            .ToHashSet();
        return from conductor in install.Wiring.Conductors
               where returns.Contains(conductor.Index) || (conductor.Kind == RunKind.Ground && !conductor.IsShield)
               let highest = SourceReach.Highest(install, conductor)
               let ampacity = install.Answers.Conductors[conductor.Index].Ampacity
               where highest is not null && ampacity is not null && highest.Value.Amps > ampacity.Value
               group (highest.Value.Amps, ampacity.Value, highest.Value.State) by conductor.RunId into ofRun
               select Of(install, install.Wiring.RunsById[ofRun.Key], ofRun.MaxBy(x => x.Item1.Value));
    }

    private Finding Of(InstalledSystem install, WiredRun run, (Amps Amps, Amps Ampacity, SystemState State) worst)
    {
        var answer = install.Answers.Conductors[run.Conductors[0].Index];
        var size = WireSizes.Carrying(worst.Amps, answer);
        return Report(
            RunText.WireAt(run),
            $"{RunText.Full(install, run)} carries back {worst.Amps:measured} {RunText.InState(worst.State)}, and may carry "
                + $"{worst.Ampacity:limit}",
            size is { } s ? FindingText.Of($"make {new WantedSize(run.Id, s)}, or divide the grounds") : $"divide the grounds", run.Id) with
        {
            Fixes = size is { } thicker ? RunText.SizeFix(run, thicker) : [],
        };
    }
}
