using WireSketch.Diagnostics;
using WireSketch.Installation;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A device that cannot break a short right behind it by itself; one ahead of it can.</summary>
internal sealed class SupplyUpstreamDeviceAlsoOpens : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/upstream-device-also-opens",
        Severity.Advice,
        Title: "A short opens the device ahead as well, which must break it",
        Why: """
            A short right behind the smaller device draws more than it can break. The device ahead can: both open, and the arc goes out. The
            system is safe, but everything behind the larger one goes dark, and both must be replaced: the owner should have spares of both.
            Apart from the rule for a device that nothing backs up, so that accepting the one never hides the other.
            """,
        new Basis.Reasoning(
            $"prospective current as in supply/breaking-capacity; a device nearer to the source may stand in: IEC 60364-4-43, 434.5.1, "
                + $"from memory"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 95 Ah, internal: 8 mohm }
              fuses: { is: fuse block, outputs: 1, style: blade maxi, fuses: { 1: 50 A } } #! supply/upstream-device-also-opens
              inverter: { is: inverter, power: 300 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 1/0 AWG red, length: 2 ft, fuse: { rating: 100 A, style: strip, at: 6 in } }
              P2: { from: fuses.out.1, to: inverter.+, wire: 4 AWG red, length: 2 ft }
              G1: { from: inverter.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 95 Ah, internal: 8 mohm }
              fuses: { is: fuse block, outputs: 1, style: strip, fuses: { 1: 50 A } }
              inverter: { is: inverter, power: 300 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: fuses.in, wire: 1/0 AWG red, length: 2 ft, fuse: { rating: 100 A, style: strip, at: 6 in } }
              P2: { from: fuses.out.1, to: inverter.+, wire: 4 AWG red, length: 2 ft }
              G1: { from: inverter.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from over in install.OverBreaking
        where over.Backing is not null
        select Report(
            RunText.RatingAt(over.Device),
            $"{over.Draws}, so {RunText.Named(over.Backing!)} must open with {(over.Several ? "them" : "it")}",
            "accept it if both may open; else fit a style that breaks more", RunText.Subject(over.Device), RunText.Subject(over.Backing!));
}
