using System.Collections.Immutable;
using WireSketch.Documents.Formats;
using WireSketch.Installation;
using WireSketch.Language;

namespace WireSketch.Documents.HandOver;

/// <summary>What the next technician needs, years later: where the vehicle's own wiring was touched, and what was noted.</summary>
internal static class NextTechnician
{
    /// <summary>Connections to the vehicle's own wiring.</summary>
    public static PlainTable Taps(InstalledSystem install) => new(
        [new("What"), new("Where"), new("Vehicle's wire"), new("Connector, cavity"), new("Carries")],
        [
            .. install.Spec.Gear.Where(g => g.Listing.Connection is not null)
                .Select(g =>
                    ImmutableArray.Create(
                        DisplayNames.WithId(g),
                        Whereabouts.Of(g),
                        g.Listing.Connection!.Color?.Value ?? "",
                        Plug(g.Listing.Connection),
                        Carries(g.Listing.Connection))),
            .. install.Wiring.Runs.Where(r => r.Run.Tap && !r.From.Concat(r.To).Any(e => e.Gear.Listing.Connection is not null))
                .Select(r =>
                    ImmutableArray.Create(
                        $"{r.Id} onto "
                            + $"{string.Join(", ", r.From.Where(e => e.Gear.InVehicle).Select(e => e.Id).DefaultIfEmpty(r.From[0].Id))}",
                        Whereabouts.Of(r.From[0].Gear),
                        r.Run.ColorAtVehicle?.Value ?? "",
                        "",
                        Lists.WireDescriptions.Carries(r.Kind))),
        ]);

    /// <summary>Wires that were in the vehicle already, and cables whose cores differ in color: by it they are told apart.</summary>
    public static PlainTable Wires(InstalledSystem install) => new(
        [new("Wire"), new("What it is"), new("From"), new("To"), new("In the vehicle already")],
        [
            .. install.Wiring.Runs.Where(r => r.InVehicle || !r.Wire.CoreColors.IsEmpty)
                .Select(r =>
                    ImmutableArray.Create(
                        r.Id,
                        Lists.WireDescriptions.Whole(r.Wire, Math.Max(r.Wire.Cores, r.From.Sum(e => e.Nodes.Length)), r.Kind),
                        string.Join(", ", r.From.Select(e => e.Id)),
                        string.Join(", ", r.To.Select(e => e.Id)),
                        r.InVehicle ? "yes" : "no")),
        ]);

    /// <summary>Notes and photos, of devices, runs and the job.</summary>
    public static IEnumerable<string> Notes(InstalledSystem install)
    {
        if (install.Spec.Job.Notes is { } job)
        {
            yield return job.Value;
        }

        foreach (var gear in install.Spec.Gear.Where(g => g.Facts.Notes is not null || g.Facts.Photo is not null))
        {
            yield return $"{DisplayNames.WithId(gear)}{(Whereabouts.Of(gear) is { Length: > 0 } where ? $" ({where})" : "")}: "
                + $"{string.Join("; ", new[] { gear.Facts.Notes?.Value, gear.Facts.Photo is { } photo ? $"photo {photo.Value}" : null }.OfType<string>())}";
        }

        foreach (var run in install.Spec.Runs.Where(r => r.Notes is not null))
        {
            yield return $"{run.Id}: {run.Notes!.Value.Value}";
        }
    }

    private static string Plug(VehicleConnection at) =>
        string.Join(", ", new[] { at.Connector?.Value, at.Cavity is { } c ? $"cavity {c.Value}" : null }.OfType<string>());

    private static string Carries(VehicleConnection at) =>
        string.Join(", ", new[] { at.Carries, at.Limit is { } l ? $"{l.Words} at most" : null }.OfType<string>());
}
