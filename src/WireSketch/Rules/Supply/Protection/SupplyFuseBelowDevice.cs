using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A fuse ahead of a device's own fuse, and smaller than that.</summary>
internal sealed class SupplyFuseBelowDevice : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/fuse-below-device",
        Severity.Advice,
        Title: "The fuse ahead is smaller than the device's own",
        Why: """
            The maker chose the device's own fuse for what it takes at its peaks. A smaller one ahead of it opens first, under the hood, and
            the one that is easy to reach never does. Fit at least the rating of the device's own fuses, on wire that carries it.
            """,
        new Basis.Practice(),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              amp: { is: amplifier, wakes-on: [remote], supply: { fuse: 60 A, current: 20 A }, channels: { sub: { minimum: 2 ohm } } }
              ignition: { is: ignition source, live: accessory }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 10 ft,
                  fuse: { rating: 30 A, at: 8 in } } #! supply/fuse-below-device
              R1: { from: ignition, to: amp.remote, wire: 18 AWG blue, length: 6 ft, tap: true }
              G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 70 Ah }
              amp: { is: amplifier, wakes-on: [remote], supply: { fuse: 60 A, current: 20 A }, channels: { sub: { minimum: 2 ohm } } }
              ignition: { is: ignition source, live: accessory }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: amp.+, wire: 4 AWG red, length: 10 ft, fuse: { rating: 60 A, at: 8 in } }
              R1: { from: ignition, to: amp.remote, wire: 18 AWG blue, length: 6 ft, tap: true }
              G1: { from: amp.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    /// <summary>One finding for a fuse, with the largest of the devices behind it; none where the load opens it already.</summary>
    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from link in install.Wiring.Links
        where link is { Protects: true, Rating: not null, Gear.InVehicle: false } && !(SourceReach.Most(install, link) > link.Rating)
        let largest = DeviceFuses.Largest(install, link)
        where largest is not null && largest.Value.Fuse.Value > link.Rating
        select Of(install, link, largest.Value.Gear, largest.Value.Fuse);

    private Finding Of(InstalledSystem install, InternalConnection link, Gear device, Written<Amps> own)
    {
        var fits = FuseSizes.AtLeast(own.Value, link.Style);
        return Report(
            RunText.RatingAt(link),
            $"{RunText.Named(link, "measured")} stands ahead of the {own:limit} that {device.Id} has of its own, and opens first",
            fits is { } f ? $"fit {f}, if the wire behind it carries that" : $"fit {own.Words} or more, if the wire behind it carries that",
            RunText.Subject(link), device.Id);
    }
}
