using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A short behind one fuse may open another, nearer to the source.</summary>
internal sealed class SupplyNotSelective : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/not-selective",
        Severity.Advice,
        Title: "A short behind one fuse may open another as well",
        Why: """
            If the main fuse opens together with the branch's, one chafed wire takes everything down and nobody sees where the fault is.
            A main fuse of at least twice the branch's rating usually stays whole; a slower style of main fuse helps.
            """,
        new Basis.Reasoning("the devices' published time limits overlap at the computed fault current"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 20 A, 2: 20 A }, style: blade }
              pump: { is: pump, current: 10 A }
              compressor: { is: motor, current: 12 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 8 AWG red, length: 10 ft,
                  fuse: { rating: 30 A, at: 10 in } } #! supply/not-selective
              P2: { from: fuses.out.1, to: pump.+, wire: 12 AWG red, length: 4 ft }
              P3: { from: fuses.out.2, to: compressor.+, wire: 12 AWG red, length: 4 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fuses: { is: fuse block, outputs: 2, fuses: { 1: 15 A, 2: 15 A }, style: blade }
              pump: { is: pump, current: 10 A }
              compressor: { is: motor, current: 12 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 4 AWG red, length: 10 ft, fuse: { rating: 80 A, style: strip, at: 10 in } }
              P2: { from: fuses.out.1, to: pump.+, wire: 12 AWG red, length: 4 ft }
              P3: { from: fuses.out.2, to: compressor.+, wire: 12 AWG red, length: 4 ft }
              G1: { from: pump.-, to: bolt, wire: 12 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a device that may open out of turn, with all the devices behind it that should.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from fault in install.Answers.Faults
        where !install.IsShorted
            && fault is { Device: not null, UpstreamOpensFirst: not null }
            && fault.DeviceAmpsAtNear > fault.UpstreamOpensFirst.Rating
        group fault by fault.UpstreamOpensFirst!.Index into ofUpstream
        let upstream = ofUpstream.First().UpstreamOpensFirst!
        let behind = ofUpstream.Select(f => f.Device!).DistinctBy(d => d.Index).ToArray()
        let amps = ofUpstream.Max(f => f.DeviceAmpsAtNear.Value)
        select Of(upstream, behind, new(amps));

    private Finding Of(InternalConnection upstream, InternalConnection[] behind, Amps amps) => Report(
        RunText.RatingAt(upstream),
        $"a short behind "
            + $"{FindingText.List(behind.Take(3).Select(RunText.Named))}{(behind.Length > 3 ? $" and {behind.Length - 3} more" : "")} "
            + $"draws up to {amps:measured}: {RunText.Named(upstream)} may open first or together",
        $"fit a larger or slower device in place of {RunText.Named(upstream)}, if its wire allows, or smaller ones behind it",
        null, [RunText.Subject(upstream), .. behind.Select(RunText.Subject)]);
}
