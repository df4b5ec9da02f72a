using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Connections;

/// <summary>A switch, relay or isolator that carries more than its contact is made for.</summary>
internal sealed class SupplyContactOverloaded : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/contact-overloaded",
        Severity.Error,
        Title: "A contact carries more than it is made for",
        Why: """
            An overloaded contact heats, burns and at last welds shut: then the load stays on with the switch off. Let a relay carry the
            load and the switch only the relay, or choose a contact made for the current.
            """,
        new Basis.Reasoning("computed current at full output against the rating as written"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              dash-switch: { is: switch, rating: 10 A } #! supply/contact-overloaded
              lightbar: { is: lamp, power: 240 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: dash-switch.in, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P2: { from: dash-switch.out, to: lightbar.+, wire: 10 AWG red, length: 6 ft }
              G1: { from: lightbar.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              dash-switch: { is: switch, rating: 40 A }
              lightbar: { is: lamp, power: 240 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: dash-switch.in, wire: 10 AWG red, length: 8 ft, fuse: { rating: 30 A, at: 8 in } }
              P2: { from: dash-switch.out, to: lightbar.+, wire: 10 AWG red, length: 6 ft }
              G1: { from: lightbar.-, to: bolt, wire: 10 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        where link.Kind is ConnectionKind.Switch or ConnectionKind.Diode && link is { Rating: not null, Gear: not null }
        let amps = SourceReach.Most(install, link)
        where amps is not null && amps.Value > link.Rating!.Value
        group (link, amps.Value) by link.Gear!.Id into ofGear
        select Of(ofGear.MaxBy(x => x.Value.Value));

    private Finding Of((InternalConnection Link, Amps Amps) worst)
    {
        var rating = worst.Link.Rating!.Value;
        var written = worst.Link.Join?.Rating;
        var isIsolator = worst.Link.Join is { Batteries: not null };
        return Report(
            written?.At ?? worst.Link.Gear!.Name.At,
            $"{(isIsolator ? "the isolator" : "the contact of")} {worst.Link.Gear!.Id} carries {worst.Amps:measured} at full output and "
                + $"is made for {PrintedValue.Of(rating, written?.Words ?? rating.ToString()):limit}",
            !isIsolator && worst.Link.Coil is null
                ? "let the switch wake a relay and the relay carry the load, or choose a switch made for it"
                : "choose one made for the current, or divide the load",
            worst.Link.Gear.Id);
    }
}
