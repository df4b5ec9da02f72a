using WireSketch.Electrical;
using WireSketch.Language.Kinds;
using WireSketch.Quantities;
using WireSketch.Text;
using WireSketch.Topology;

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

    /// <summary>
    /// One finding for a device, or for all fuses of one block, at the highest current they may have to break. That a device nearer to the
    /// source may stand in for one that cannot break the current: IEC 60364-4-43, 434.5.1, from memory.
    /// </summary>
    public override IEnumerable<Finding> Check(Install install)
    {
        var capable = install.Answers.Faults.Where(f => f is { Device: not null, Breaking: not null })
            .GroupBy(f => f.Device!.Index).ToDictionary(g => g.Key, g => g.First().Breaking!.Value);
        return from fault in install.Answers.Faults
               where !install.IsShorted && fault is { Device: not null, Breaking: { } breaking } && fault.DeviceAmpsAtNear > breaking
               group fault by fault.Device!.Index into ofDevice
               let worst = ofDevice.MaxBy(f => f.DeviceAmpsAtNear.Value)!
               let backing = BackedBy(install, worst, capable)
               group (worst, backing) by (RunWords.Subject(worst.Device!), backing?.Index) into ofHolder
               select Of([.. ofHolder.Select(x => x.worst)], ofHolder.First().backing);
    }

    /// <summary>A device ahead, on every way to this one, that can break the current: it opens too, and the arc goes out.</summary>
    private static Link? BackedBy(Install install, FaultAnswer fault, Dictionary<int, Amps> capable)
    {
        Link? found = null;
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

    private Finding Of(FaultAnswer[] faults, Link? backing)
    {
        var worst = faults.MaxBy(f => f.DeviceAmpsAtNear.Value)!;
        var device = worst.Device!;
        var style = device.Style is { } words ? words + " " : "";
        var draws = faults.Length == 1
            ? $"a short right behind {RunWords.Named(device)} draws {worst.DeviceAmpsAtNear}; {(style.Length > 0 ? $"a {style}{RunWords.Device(device)}" : "it")} breaks {worst.Breaking} at most"
            : $"a short right behind a fuse of the block {device.Gear!.Id} draws {worst.DeviceAmpsAtNear}; {style}fuses break {worst.Breaking} at most";
        return backing is not null
            ? Found(
                RunWords.RatingAt(device), $"{draws}, so {RunWords.Named(backing)} must open with {(faults.Length == 1 ? "it" : "them")}",
                "accept it if both may open; else fit a style that breaks more", Severity.Advice, RunWords.Subject(device), RunWords.Subject(backing))
            : Found(
                RunWords.RatingAt(device),
                draws,
                device.Kind == LinkKind.Breaker ? "put a fuse that can break it ahead of the breaker, or write breaking: if the breaker's sheet says more"
                    : device.Gear is FuseBlock ? "put a main fuse that can break it ahead of the block, such as style: strip, or set the block farther from the battery"
                    : "name a style that can break it: style: strip, or style: class T with breaking: from its sheet",
                RunWords.Subject(device));
    }
}
