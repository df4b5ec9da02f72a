using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A fuse that the load itself opens.</summary>
internal sealed class SupplyFuseBelowLoad : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/fuse-below-load",
        Severity.Error,
        Title: "The fuse is rated below the load",
        Why: """
            A fuse that the load itself opens fails when the system is played hard, and somebody will then fit a larger one without looking
            at the wire. Above 90 % of its rating a fuse ages: that is only an advice.
            """,
        new Basis.Reasoning("a fuse must carry the load; the 90 % is common practice, no published source"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 18 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 10 AWG red, length: 8 ft,
                  fuse: { rating: 15 A, at: 8 in } } #! supply/fuse-below-load
              G1: { from: pump.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              pump: { is: pump, current: 18 A }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: pump.+, wire: 10 AWG red, length: 8 ft, fuse: { rating: 25 A, at: 8 in } }
              G1: { from: pump.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        where link.Protects && link.Rating is not null
        let load = SourceReach.Highest(install, link)
        where load is { } most && FuseSizes.IsBeyondComfort(most.Amps, link.Rating!.Value)
        select Of(install, link, load.Value.Amps, load.Value.State);

    private Finding Of(InstalledSystem install, InternalConnection link, Amps load, SystemState state)
    {
        var rating = link.Rating!.Value;
        var behind = install.Wiring.Feeds.SelectMany(f => f.Conductors).Where(c => c.Protections.Contains(link)).ToArray();
        var ampacity = behind.Select(c => install.Answers.Conductors[c.Conductor.Index].Ampacity)
            .Where(a => a is not null)
            .Select(a => a!.Value)
            .DefaultIfEmpty(new Amps(0))
            .Min();
        var fits = FuseSizes.For(load, ampacity, link.Style);
        var loads = install.Answers.State(state).Loads
            .Where(l => l.Path.Supply.Any(s => s.Link is { } s2 && s2.Index == link.Index))
            .Select(l => l.Path.Gear.Id)
            .ToArray();
        var who = loads.Length == 0 ? "" : $" for {RunText.List(loads)}";
        return Report(
            RunText.RatingAt(link),
            load > rating
                ? FindingText.Of($"{RunText.Named(link, "limit")} must carry {load:measured} {RunText.InState(state)}{who}: it will open")
                : $"{RunText.Named(link, "limit")} carries {load:measured} {RunText.InState(state)}{who}, {new Share(load / rating)} of "
                    + $"its rating: it ages",
            fits is { } f
                ? $"fit {f}"
                : $"the wire behind it carries {ampacity}: make it thicker, then fit "
                    + $"{FuseSizes.AtLeast(load / FuseSizes.Comfortable, link.Style)?.ToString() ?? "a larger one"}",
            load > rating ? Severity.Error : Severity.Advice,
            RunText.Subject(link)) with
        {
            Fixes = fits is { } rated ? RunText.RatingFix(link, rated) : [],
        };
    }
}
