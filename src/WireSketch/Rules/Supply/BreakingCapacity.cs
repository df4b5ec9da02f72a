using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
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
            battery, the current is highest: bolt-down strip fuses and class T fuses are made for that. A smaller fuse further on may stand
            if one ahead of it can break the current: both open then.
            """,
        new Basis.Reasoning("prospective current from the source's internal resistance and the wire up to the device; capacities as written, else of ISO 8820-3 and ISO 8820-5 (1000 A and 2000 A at 32 V)"),
        Bad: """
            gear:
              battery: { is: battery, origin: factory, capacity: 95 Ah, internal: 5 mohm }
              inverter: { is: inverter, power: 300 W }
              bolt: { is: chassis point, surface: bare metal }
            runs:
              P1: { from: battery.+, to: inverter.+, wire: 4 AWG red, length: 8 ft, fuse: { rating: 50 A, style: blade maxi, at: 6 in } } #! supply/breaking-capacity
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

    /// <summary>One finding for a device, at the highest current it may have to break.</summary>
    public override IEnumerable<Finding> Check(Install install)
    {
        var capable = install.Answers.Faults.Where(f => f is { Device: not null, Breaking: not null })
            .GroupBy(f => f.Device!.Index).ToDictionary(g => g.Key, g => g.First().Breaking!.Value);
        return from fault in install.Answers.Faults
               where fault is { Device: not null, Breaking: { } breaking } && fault.DeviceAmpsAtNear > breaking
               group fault by fault.Device!.Index into ofDevice
               let worst = ofDevice.MaxBy(f => f.DeviceAmpsAtNear.Value)!
               select Of(worst, BackedBy(install, worst, capable));
    }

    /// <summary>A device ahead, on every way to this one, that can break the current: it opens too, and the arc goes out.</summary>
    private static Topology.Link? BackedBy(Install install, FaultAnswer fault, Dictionary<int, Amps> capable)
    {
        Topology.Link? found = null;
        foreach (var way in install.Wiring.Feeds.Where(f => f.Source.Gear is Battery).SelectMany(f => f.Conductors).Where(c => c.Protections.Contains(fault.Device!)))
        {
            var backing = way.Protections.TakeWhile(p => p.Index != fault.Device!.Index)
                .LastOrDefault(p => capable.TryGetValue(p.Index, out var most) && most >= fault.DeviceAmpsAtNear);
            if (backing is null)
            {
                return null;
            }

            found ??= backing;
        }

        return found;
    }

    private Finding Of(FaultAnswer fault, Topology.Link? backing)
    {
        var device = fault.Device!;
        var draws = $"a short right behind {RunWords.Named(device)} draws {fault.DeviceAmpsAtNear}; {(device.Style is { } style ? $"a {style} {RunWords.Device(device)}" : "it")} breaks {fault.Breaking} at most";
        return backing is not null
            ? Found(RunWords.RatingAt(device), $"{draws}, so {RunWords.Named(backing)} must open with it", null, Severity.Advice, RunWords.Subject(device), RunWords.Subject(backing))
            : Found(
                RunWords.RatingAt(device),
                draws,
                device.Kind == Topology.LinkKind.Breaker
                    ? "put a fuse that can break it ahead of the breaker, or write breaking: if the breaker's sheet says more"
                    : "name a style that can break it: style: strip, or style: class T with breaking: from its sheet",
                RunWords.Subject(device));
    }
}
