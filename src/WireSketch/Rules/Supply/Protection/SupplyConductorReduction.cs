using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Quantities;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A thinner wire behind a thicker one, with only the thicker one's fuse before it.</summary>
internal sealed class SupplyConductorReduction : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/conductor-reduction",
        Severity.Error,
        Title: "A thinner wire goes on without a fuse of its own",
        Why: """
            The fuse at the battery is chosen for the thick cable. Where a thinner wire goes on from a block or a splice, that fuse does not
            protect it. Every thinner branch needs a fuse where it begins: a fuse block instead of a distribution block does it.
            """,
        new Basis.Published(
            $"33 CFR 183.455(a) with 183.425 Table 5: each conductor is protected by its own allowable amperage; written for boats, "
                + $"taken here as good practice"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              block: { is: distribution block, outputs: 2 }
              pump: { is: pump, current: 20 A }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 12 ft, fuse: { rating: 80 A, at: 10 in } }
              P2: { from: block.out.1, to: pump.+, wire: 8 AWG red, length: 3 ft } #! supply/conductor-reduction
              P3: { from: block.out.2, to: compressor.+, wire: 4 AWG red, length: 3 ft }
              G1: { from: pump.-, to: bolt, wire: 8 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              block: { is: distribution block, outputs: 2 }
              pump: { is: pump, current: 20 A }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 12 ft, fuse: { rating: 80 A, at: 10 in } }
              P2: { from: block.out.1, to: pump.+, wire: 8 AWG red, length: 3 ft, fuse: { rating: 30 A, at: 4 in } }
              P3: { from: block.out.2, to: compressor.+, wire: 4 AWG red, length: 3 ft }
              G1: { from: pump.-, to: bolt, wire: 8 AWG black, length: 12 in }
              G2: { from: compressor.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a run; a piece before a fuse of its own is short enough if that fuse is near.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from guard in install.Protections
        where guard.IsOverrated && guard.Thicker is not null && !IsShortStretchToDevice(install, guard)
        group guard by guard.Conductor.RunId into ofRun
        select Of(install, ofRun.MinBy(g => (g.Answer.Ampacity!.Value.Value, g.Conductor.Index))!);

    /// <summary>
    /// The same grace as at a source: the first device of the thinner wire within 18 in of where it begins (common practice, no published
    /// source).
    /// </summary>
    private static bool IsShortStretchToDevice(InstalledSystem install, ConductorProtection guard) =>
        guard.Conductor.Length <= UnprotectedLengths.Limit && install.Wiring.LinksAt[guard.Fed.Far.Index].Any(l => l.Protects);

    private Finding Of(InstalledSystem install, ConductorProtection guard)
    {
        var run = RunText.Of(install, guard.Conductor);
        var thick = RunText.Of(install, guard.Thicker!);
        var ampacity = guard.Answer.Ampacity!.Value;
        var load = SourceReach.Most(install, guard.Conductor) ?? new Amps(0);
        var at = RunText.Length(install, Meters.FromInches(4));
        return Report(
            RunText.WireAt(run),
            $"{RunText.Full(install, run)} goes on from {RunText.Full(install, thick)} and carries {ampacity:limit}; before it there is "
                + $"only {RunText.Named(guard.Device, "measured")}",
            FuseSizes.For(load, ampacity, null) is { } rating
                ? $"add fuse: {{ rating: {rating}, at: {at} }} to {run.Id} where it begins, or make it as thick as {thick.Id}"
                : $"make {run.Id} as thick as {thick.Id}: it is to carry {load}",
            run.Id, thick.Id, RunText.Subject(guard.Device)) with
        {
            Fixes = RunText.SizeFix(run, thick.Wire.Size),
        };
    }
}
