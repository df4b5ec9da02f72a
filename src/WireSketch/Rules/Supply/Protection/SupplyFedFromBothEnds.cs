using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A run between two sources that is protected at one end only.</summary>
internal sealed class SupplyFedFromBothEnds : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/fed-from-both-ends",
        Severity.Error,
        Title: "A wire between two sources is protected at one end only",
        Why: """
            A wire between two batteries is fed from both ends: if it is shorted, the fuse at one end opens and the other battery goes on
            feeding the short. It needs a fuse near each. An alternator or charger that cannot give more than the wire carries needs none
            at its own end, if the spec says what it gives.
            """,
        new Basis.Published(
            "33 CFR 183.455(a), (b): a device at the source of power of each conductor; written for boats, taken here as good practice"),
        Bad: """
            gear:
              starter-battery: { is: battery, origin: factory, capacity: 70 Ah }
              house-battery: { is: battery, capacity: 90 Ah }
              relay: { is: isolator, type: voltage sensing, rating: 140 A }
              rear-bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter-battery.+, to: relay.main, wire: 4 AWG red, length: 3 ft, fuse: { rating: 100 A, at: 10 in } }
              P2: { from: relay.second, to: house-battery.+, wire: 4 AWG red, length: 15 ft } #! supply/fed-from-both-ends
              G1: { from: house-battery.-, to: rear-bolt, wire: 4 AWG black, length: 14 in }
              G2: { from: relay.-, to: rear-bolt, wire: 16 AWG black, length: 10 in }
            """,
        Good: """
            gear:
              starter-battery: { is: battery, origin: factory, capacity: 70 Ah }
              house-battery: { is: battery, capacity: 90 Ah }
              relay: { is: isolator, type: voltage sensing, rating: 140 A }
              rear-bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: starter-battery.+, to: relay.main, wire: 4 AWG red, length: 3 ft, fuse: { rating: 100 A, at: 10 in } }
              P2: { from: house-battery.+, to: relay.second, wire: 4 AWG red, length: 15 ft, fuse: { rating: 100 A, at: 10 in } }
              G1: { from: house-battery.-, to: rear-bolt, wire: 4 AWG black, length: 14 in }
              G2: { from: relay.-, to: rear-bolt, wire: 16 AWG black, length: 10 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        install.Unprotected.Where(s => s.Fault == UnprotectedLengthFault.OtherEnd).Select(s => Of(install, s));

    private Finding Of(InstalledSystem install, UnprotectedLength stretch)
    {
        var run = RunText.Of(install, stretch.Fed.Conductor);
        var source = stretch.Source;
        var gives = install.Wiring.SourceAt(source)?.Source;
        var limits = gives is AlternatorSource or ChargerSource && SourceReach.Limit(install, source) is null;
        var ampacity = install.Answers.Conductors[stretch.Fed.Conductor.Index].Ampacity;
        return Report(
            run.Run.Name.At,
            $"{RunText.Full(install, run)} is fed from {stretch.Other} and from {source}; {RunText.Named(stretch.Device!)} protects it "
                + $"against {stretch.Other}, but from {source} the first device is "
                + $"{RunText.Measure(install, stretch.First!.Value):measured} away",
            limits
                ? $"write what {source.Gear!.Id} can give ({(gives is AlternatorSource ? "output" : "current")}: 90 A): a wire that "
                    + $"carries all of it needs no fuse there; else add a fuse within "
                    + $"{RunText.Length(install, UnprotectedLengths.Limit)} of {source}"
                : $"add a fuse{(ampacity is { } a && FuseSizes.AtMost(a, null) is { } most ? $" of {most} or less" : "")} within "
                    + $"{RunText.Length(install, UnprotectedLengths.Limit)} of {source}",
            run.Id, source.Id);
    }
}
