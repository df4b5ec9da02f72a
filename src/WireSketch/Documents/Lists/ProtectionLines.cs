using WireSketch.Installation;
using WireSketch.Language;
using WireSketch.Quantities;
using WireSketch.Topology;

namespace WireSketch.Documents.Lists;

/// <summary>Fuses, their holders, inline breakers, and one spare of each fuse.</summary>
internal static class ProtectionLines
{
    public static IEnumerable<PartLine> Of(InstalledSystem install) => [
        .. Holders(install), .. Breakers(install), .. Fuses(install, spares: false)
    ];

    public static IEnumerable<PartLine> SparesOf(InstalledSystem install) => Fuses(install, spares: true);

    private static IEnumerable<PartLine> Holders(InstalledSystem install)
    {
        var inline = install.Wiring.Runs.Where(r => r.Holder is { Breaker: false } && r.Run.Protection is { InVehicle: false })
            .Select(r =>
                (
                    Item: $"inline holder for a {FuseStyleChoice.Of(install, r.Holder!)} fuse, {r.Wire.SizeWords}",
                    At: Place(r),
                    Price: (double?)null));
        var alone = install.Spec.Gear.Where(p => p.Listing.As == ListedAs.Fuse && !p.InVehicle)
            .Select(p => (Item: $"holder for a {FuseStyleChoice.Of(install, p)} fuse", At: p.Id, Price: p.Facts.Price?.Value));
        return inline.Concat(alone).GroupBy(h => (h.Item, h.Price))
            .Select(g =>
                new PartLine(
                    PartGroup.Protection, g.Key.Item, g.Count(), PartLine.Pieces, g.Key.Price, [.. g.Select(h => h.At)], "with cover"));
    }

    private static IEnumerable<PartLine> Breakers(InstalledSystem install) => install.Wiring.Runs
        .Where(r => r.Holder is { Breaker: true } && r.Run.Protection is { InVehicle: false })
        .GroupBy(r => $"circuit breaker, {r.Holder!.Rating?.Words ?? "rating not given"}, {r.Holder.Reset?.Words ?? "manual"} reset")
        .Select(g => new PartLine(PartGroup.Protection, g.Key, g.Count(), PartLine.Pieces, null, [.. g.Select(Place)], ""));

    private static IEnumerable<PartLine> Fuses(InstalledSystem install, bool spares) => install.Wiring.Links
        .Where(l => l.Kind == ConnectionKind.Fuse && !InVehicle(install, l) && FuseStyleChoice.IsFitted(install, l))
        .GroupBy(l => (Style: FuseStyleChoice.Of(install, l), Rating: l.Rating?.Value))
        .Select(g => new PartLine(
            spares ? PartGroup.Spares : PartGroup.Protection,
            $"fuse, {g.Key.Style}, {(g.Key.Rating is { } amps ? Quantity.Print(new Amps(amps)) : "rating not given")}",
            spares ? 1 : g.Count(),
            PartLine.Pieces,
            null,
            [.. g.Select(l => l.Id)],
            spares ? "stays with the vehicle" : Ask(g.Select(l => FuseStyleChoice.ToAskFor(install, l)).Max())));

    /// <summary>A fuse that is written on a run, in a holder or in a block, says so itself; another comes with its device.</summary>
    private static bool InVehicle(InstalledSystem install, InternalConnection link)
    {
        var run = install.Wiring.Runs.FirstOrDefault(r => r.Run.Protection is not null
            && (r.Holder is { } holder ? ReferenceEquals(holder, link.Gear) : r.From.Any(e => e.Nodes.Contains(link.B))));
        return run?.Run.Protection?.InVehicle ?? link.Gear is { InVehicle: true };
    }

    private static string Ask(Amps? breaking) => breaking is { } amps ? $"must break {amps}: see its sheet" : "";

    private static string Place(WiredRun run) =>
        run.Run.Protection?.Distance is { } at ? $"{run.Id}, {at} from {run.From[0].Id}" : run.Id;
}
