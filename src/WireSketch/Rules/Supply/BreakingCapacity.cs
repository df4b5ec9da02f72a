using WireSketch.Electrical;
using WireSketch.Text;

namespace WireSketch.Rules.Supply;

/// <summary>A device that cannot break the current of a short right behind it.</summary>
internal sealed class BreakingCapacity : Rule
{
    public override RuleCard Card { get; } = new(
        Id: "supply/breaking-capacity",
        Severity.Error,
        Title: "A short gives more current than the device can break",
        Why: """
            Beyond its breaking capacity a fuse may arc on or burst, and a breaker may weld. Close to a battery, and above all to a lithium
            battery, the current is highest: bolt-down strip fuses and class T fuses are made for that.
            """,
        new Basis.Reasoning("prospective current from the source's internal resistance and the wire up to the device; capacities as written, else of ISO 8820-3 and ISO 8820-5 (1000 A and 2000 A at 32 V)"),
        Bad: """
            gear:
              house-battery: { is: battery, chemistry: lithium, capacity: 200 Ah, internal: 2 mohm }
              inverter: { is: inverter, power: 300 W }
              stud: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: house-battery.+, to: inverter.+, wire: 6 AWG red, length: 3 ft, fuse: { rating: 50 A, style: blade maxi, at: 6 in } } #! supply/breaking-capacity
              P2: { from: house-battery.-, to: inverter.-, wire: 6 AWG black, length: 3 ft }
              G1: { from: house-battery.-, to: stud, wire: 6 AWG black, length: 14 in }
            """,
        Good: """
            gear:
              house-battery: { is: battery, chemistry: lithium, capacity: 200 Ah, internal: 2 mohm }
              inverter: { is: inverter, power: 300 W }
              stud: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: house-battery.+, to: inverter.+, wire: 6 AWG red, length: 3 ft, fuse: { rating: 50 A, style: class T, breaking: 20000 A, at: 6 in } }
              P2: { from: house-battery.-, to: inverter.-, wire: 6 AWG black, length: 3 ft }
              G1: { from: house-battery.-, to: stud, wire: 6 AWG black, length: 14 in }
            """);

    /// <summary>One finding for a device, at the highest current it may have to break.</summary>
    public override IEnumerable<Finding> Check(Install install) =>
        from fault in install.Answers.Faults
        where fault is { Device: not null, Breaking: { } breaking } && fault.DeviceAmpsAtNear > breaking
        group fault by fault.Device!.Index into ofDevice
        select Of(ofDevice.MaxBy(f => f.DeviceAmpsAtNear.Value)!);

    private Finding Of(FaultAnswer fault)
    {
        var device = fault.Device!;
        return Found(
            RunWords.RatingAt(device),
            $"a short right behind {RunWords.Named(device)} draws {fault.DeviceAmpsAtNear}; {(device.Style is { } style ? $"a {style} {RunWords.Device(device)}" : "it")} breaks {fault.Breaking} at most",
            device.Kind == Topology.LinkKind.Breaker
                ? "put a fuse that can break it ahead of the breaker, or write breaking: if the breaker's sheet says more"
                : "name a style that can break it: style: strip, or style: class T with breaking: from its sheet",
            RunWords.Subject(device));
    }
}
