using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A fuse in a rating that is not made.</summary>
internal sealed class SupplyUnusualRating : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/unusual-rating",
        Severity.Warning,
        Title: "No fuse of that style is made in that rating",
        Why: """
            A fuse that cannot be bought is replaced by what lies in the drawer. Write a rating in which the style comes; if a maker does
            offer it, accept this finding with the part's name as the reason.
            """,
        new Basis.Published(
            "ratings listed for ISO 8820-3 and ISO 8820-5 families and UL 248-15; other styles from memory of makers' lists"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 14 ft,
                  fuse: { rating: 12 A, at: 8 in } } #! supply/unusual-rating
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              fridge: { is: fridge, power: 60 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fridge.+, wire: 12 AWG red, length: 14 ft, fuse: { rating: 10 A, at: 8 in } }
              G1: { from: fridge.-, to: bolt, wire: 12 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        where link is { Kind: ConnectionKind.Fuse, Rating: { } rating } && !FuseSizes.IsMade(rating, link.Style)
        select Of(link, link.Rating!.Value);

    private Finding Of(InternalConnection link, Amps rating)
    {
        var below = FuseSizes.AtMost(rating, link.Style);
        var above = FuseSizes.AtLeast(rating, link.Style);
        var near = FindingText.List(new[] { below, above }.Where(a => a is not null).Select(a => FindingText.Of($"{a!.Value:made}")));
        return Report(
            RunText.RatingAt(link),
            $"{RunText.Named(link)}: {(link.Style is { } style ? $"{FuseStyles.Words[style]} fuses do not come" : "no style comes")} in "
                + $"{rating:measured}; the nearest are {near}",
            below is { } b && above is { } a ? $"fit {b} or {a}, as load and wire allow" : $"fit {near}, or name another style",
            RunText.Subject(link)) with
        {
            Fixes = [.. new[] { below, above }.Where(r => r is not null).SelectMany(r => RunText.RatingFix(link, r!.Value))],
        };
    }
}
