using System.Collections.Immutable;
using WireSketch.Documents.Formats;
using WireSketch.Documents.Lists;
using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.HandOver;

/// <summary>Every fuse and breaker: what it is, where it is, what it feeds.</summary>
internal static class FuseMap
{
    public static PlainTable Of(InstalledSystem install) => new(
        [new("Fuse"), new("Rating"), new("Style"), new("Where"), new("Feeds")],
        [
            .. install.Wiring.Links.Where(l => l.Protects && l.Gear is not { InVehicle: true } && FuseStyleChoice.IsFitted(install, l))
                .Select(l => Row(install, l))
        ]);

    /// <summary>Where a fuse sits, for somebody who looks for it.</summary>
    public static string Where(InstalledSystem install, InternalConnection link)
    {
        var run = install.Wiring.Runs.FirstOrDefault(r => r.Holder is { } h && ReferenceEquals(h, link.Gear));
        return run is not null
            ? $"{(run.Run.Protection?.Distance is { } at ? $"{at} from "
                + $"{run.From[0].Id}" : run.From[0].Id)}{(run.From[0].Gear.Zone is { } z ? $" ({z})" : "")}"
            : link.Gear is { } gear ? Whereabouts.Of(gear) : "";
    }

    private static ImmutableArray<string> Row(InstalledSystem install, InternalConnection link) =>
    [
        link.Id, link.Rating is { } rating ? Quantity.Print(rating) : "not given", FuseStyleChoice.Of(install, link), Where(install, link),
        string.Join(", ", Fed(install, link).DefaultIfEmpty("nothing yet")),
    ];

    /// <summary>
    /// Batteries that a fuse stands between; else the devices that a battery feeds through it; else what its wire leads to, a source with
    /// a fuse of its own perhaps.
    /// </summary>
    private static IEnumerable<string> Fed(InstalledSystem install, InternalConnection link)
    {
        var behind = install.Wiring.Feeds.Where(f => install.Wiring.SourceAt(f.Source)?.Source is BatterySource)
            .SelectMany(f => f.Conductors.Where(c => c.Protections.Contains(link)), (f, c) => (Source: f.Source.Gear!, c.Far))
            .ToArray();
        var batteries = behind.Where(b => IsBattery(b.Far.Gear) && !ReferenceEquals(b.Far.Gear, b.Source))
            .SelectMany(b => new[] { b.Source.Id, b.Far.Gear!.Id })
            .Distinct(StringComparer.Ordinal)
            .Order(StringComparer.Ordinal)
            .ToArray();
        if (batteries.Length > 1)
        {
            return [$"the line between {string.Join(" and ", batteries)}"];
        }

        var loads = install.Wiring.Loads.Where(l => behind.Any(b => b.Far.Index == l.Plus.Index)).Select(l => l.Gear.Id).ToArray();
        if (loads.Length > 0)
        {
            return loads;
        }

        return install.Wiring.Feeds.SelectMany(f => f.Conductors)
            .Where(c => c.Protections.LastOrDefault()?.Index == link.Index)
            .Select(c => c.Far.Gear)
            .OfType<Gear>()
            .Where(g => !g.OnlyProtects && !ReferenceEquals(g, link.Gear))
            .OrderByDescending(Charges).Select(g => Charges(g) ? $"{g.Id}, which charges" : g.Id).Distinct(StringComparer.Ordinal)
            .Take(1);
    }

    private static bool IsBattery(Gear? gear) => gear is not null && gear.Sources.Any(s => s is BatterySource);

    private static bool Charges(Gear gear) => gear.Sources.Any(s => s is ChargerSource);
}
