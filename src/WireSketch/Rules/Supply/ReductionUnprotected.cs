using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Rules.Supply;

/// <summary>A thinner wire behind a thicker one, with only the thicker one's fuse before it.</summary>
internal sealed class ReductionUnprotected : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/reduction-unprotected",
        Severity.Error,
        Title: "A thinner wire goes on without a fuse of its own",
        Why: """
            The fuse at the battery is chosen for the thick cable. Where a thinner wire goes on from a block or a splice, that fuse does not
            protect it. Every thinner branch needs a fuse where it begins: a fuse block instead of a distribution block does it.
            """,
        new Basis.Published("33 CFR 183.455(a) with 183.425 Table 5: each conductor is protected by its own allowable amperage; written for boats, taken here as good practice"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              block: { is: distribution block, outputs: 2 }
              pump: { is: pump, current: 20 A }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: block.in, wire: 4 AWG red, length: 12 ft, fuse: { rating: 80 A, at: 10 in } }
              P2: { from: block.out.1, to: pump.+, wire: 8 AWG red, length: 3 ft } #! supply/reduction-unprotected
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
    public override IEnumerable<Finding> Check(Install install) =>
        from guard in Guards.Of(install)
        where guard.IsOverrated && guard.Thicker is not null && !IsShortStretchToDevice(install, guard)
        group guard by guard.Conductor.RunId into ofRun
        select Of(install, ofRun.MinBy(g => (g.Answer.Ampacity!.Value.Value, g.Conductor.Index))!);

    /// <summary>The same grace as at a source: the first device of the thinner wire within 18 in of where it begins (common practice, no published source).</summary>
    private static bool IsShortStretchToDevice(Install install, Guard guard) =>
        guard.Conductor.Length <= Stretches.Limit && install.Wiring.LinksAt[guard.Fed.Far.Index].Any(l => l.Protects);

    private Finding Of(Install install, Guard guard)
    {
        var run = RunWords.Of(install, guard.Conductor);
        var thick = RunWords.Of(install, guard.Thicker!);
        var ampacity = guard.Answer.Ampacity!.Value;
        var load = Feeding.Most(install, guard.Conductor) ?? new Amps(0);
        var at = RunWords.Length(install, Metres.FromInches(4));
        return Found(
            RunWords.WireAt(run),
            $"{RunWords.Full(install, run)} goes on from {RunWords.Full(install, thick)} and carries {ampacity}; before it there is only {RunWords.Named(guard.Device)}",
            FuseSizes.For(load, ampacity, null) is { } rating
                ? $"add fuse: {{ rating: {rating}, at: {at} }} to {run.Id} where it begins, or make it as thick as {thick.Id}"
                : $"make {run.Id} as thick as {thick.Id}: it is to carry {load}",
            run.Id, thick.Id, RunWords.Subject(guard.Device)) with
        {
            Fixes = RunWords.SizeFix(run, thick.Wire.Size),
        };
    }
}
