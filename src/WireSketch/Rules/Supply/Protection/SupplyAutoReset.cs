using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language.Kinds;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A breaker that closes again by itself.</summary>
internal sealed class SupplyAutoReset : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/auto-reset",
        Severity.Warning,
        Title: "The breaker closes again by itself",
        Why: """
            A breaker that resets itself feeds a short again and again, with nobody near, until something burns or its contacts weld. Where
            it is the wire's protection, let it be reset by hand, or fit a fuse.
            """,
        new Basis.Published(
            "33 CFR 183.455(a): a manually reset, trip-free circuit breaker or fuse; written for boats, taken here as good practice"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: compressor.+, wire: 8 AWG red, length: 8 ft,
                  breaker: { rating: 40 A, reset: automatic, at: 8 in } } #! supply/auto-reset
              G1: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              compressor: { is: motor, current: 22 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: compressor.+, wire: 8 AWG red, length: 8 ft, breaker: { rating: 40 A, reset: manual, at: 8 in } }
              G1: { from: compressor.-, to: bolt, wire: 8 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        let reset = link.Join?.Reset
        where reset is { Value: BreakerReset.Automatic } && link.Gear is { InVehicle: false }
            && install.Wiring.Feeds.Any(f => f.Conductors.Any(c => !c.Protections.IsEmpty && c.Protections[^1].Index == link.Index))
        select Report(
            reset.Value.At, $"{RunText.Named(link)} resets itself: it would feed a short again and again",
            "write reset: manual and fit such a breaker, or fit a fuse", RunText.Subject(link)) with
        {
            Fixes = [new("write manual", [new(reset.Value.At, "manual")])],
        };
}
