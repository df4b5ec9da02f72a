using WireSketch.Diagnostics;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Rules.Supply.Protection;

/// <summary>A device that cannot break the current of a short right behind it.</summary>
internal sealed class SupplyBreakingCapacity : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/breaking-capacity",
        Severity.Error,
        Title: "A short gives more current than the device can break",
        Why: """
            Beyond its breaking capacity a fuse may arc on or burst, and a breaker may weld. Close to a battery, and above all to a lithium
            battery, the current is highest: bolt-down strip fuses and class T fuses are made for that. A smaller fuse further on may stand
            if one ahead of it can break the current: both open then.
            """,
        new Basis.Reasoning(
            $"prospective current from the source's internal resistance and the wire up to the device; capacities as written, else of "
                + $"ISO 8820-3 and ISO 8820-5 (1000 A and 2000 A at 32 V)"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 95 Ah, internal: 5 mohm }
              inverter: { is: inverter, power: 300 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 8 ft,
                  fuse: { rating: 50 A, style: blade maxi, at: 6 in } } #! supply/breaking-capacity
              G1: { from: inverter.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """,
        Good: """
            gear:
              battery: { is: battery, origin: factory, capacity: 95 Ah, internal: 5 mohm }
              inverter: { is: inverter, power: 300 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 8 ft, fuse: { rating: 50 A, style: strip, at: 6 in } }
              G1: { from: inverter.-, to: bolt, wire: 4 AWG black, length: 12 in }
            """);

    public override IEnumerable<Finding> Check(InstalledSystem install) =>
        from over in install.OverBreaking
        where over.Backing is null
        select Report(
            RunText.RatingAt(over.Device), over.Draws,
            over.Device.Kind == ConnectionKind.Breaker ? $"put a fuse that can break it ahead of the breaker, or write breaking: if the "
                + $"breaker's sheet says more"
                : over.Device.Join is { FuseMayStandAtRun: true }
                ? "put a main fuse that can break it ahead of the block, such as style: strip, or set the block farther from the battery"
                : "name a style that can break it: style: strip, or style: class T with breaking: from its sheet",
            RunText.Subject(over.Device));
}
