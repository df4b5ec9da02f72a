using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A fuse that opens when its load starts.</summary>
internal sealed class SupplyFuseBelowSurge : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/fuse-below-surge",
        Severity.Warning,
        Title: "The fuse may open when its load starts",
        Why: """
            A motor draws several times its running current until it turns. A quick fuse opens before that is over, at first only now and
            then. A larger one, if the wire allows, or a slower construction carries the start and still protects the wire.
            """,
        new Basis.Published(
            $"least opening times by ISO 8820-3 and type sheets that refer to it; that a start lasts half a second is common practice, "
                + $"no published source"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 8 A, surge: 30 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 10 AWG red, length: 8 ft,
                  fuse: { rating: 10 A, at: 8 in } } #! supply/fuse-below-surge
              G1: { from: pump.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 8 A, surge: 30 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 25 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install)
    {
        var full = install.Answers.State(SystemState.FullOutput);
        return from link in install.Wiring.Links
               where link is { Protects: true, Rating.Value: > 0 }
               let rating = link.Rating!.Value
               let start = StartingCurrents.StartOf(install, link)

               // What the load opens in the long run is told by another rule.
               where start.Load is not null
                   && Math.Abs(full.LinkAmps[link.Index].Value) <= rating.Value
                   && !StartingCurrents.Outlasts(StartingCurrents.StyleOf(install, link, rating), start.Amps, rating)
               select Of(
                   install,
                   link,
                   start.Load!,
                   start.Amps,
                   FuseTable.OpeningOf(StartingCurrents.StyleOf(install, link, rating), start.Amps / rating).Least,
                   StartingCurrents.StyleOf(install, link, rating));
    }

    private Finding Of(InstalledSystem install, InternalConnection link, string load, Amps amps, Seconds? opens, FuseStyle? style)
    {
        var behind = install.Wiring.Feeds.SelectMany(f => f.Conductors)
            .Where(c => c.Protections.Contains(link))
            .Select(c => install.Answers.Conductors[c.Conductor.Index].Ampacity)
            .OfType<Amps>().DefaultIfEmpty(new Amps(0)).Min();
        Amps? fits = (style is { } known ? FuseTable.RatingsOf(known) : [])
            .Where(r => r > link.Rating!.Value && r <= behind && StartingCurrents.Outlasts(style, amps, r))
            .Select(r => (Amps?)r)
            .FirstOrDefault();
        return Report(
            RunText.RatingAt(link),
            $"{RunText.Named(link, "limit")} carries {amps:measured} when {load} starts, {new Share(amps / link.Rating!.Value)} of its "
                + $"rating: it may open {(opens is { } t ? FindingText.Of($"after {t:opens within} already") : $"at once")}, and a "
                + $"start lasts about {StartingCurrents.Start:start}",
            fits is { } rated
                ? $"fit {rated}; the wire behind it carries {behind}"
                : $"a slower construction, or thicker wire and a larger fuse: the wire behind it carries {behind}",
            RunText.Subject(link), load) with
        {
            Fixes = fits is { } larger ? RunText.RatingFix(link, larger) : [],
        };
    }

}
