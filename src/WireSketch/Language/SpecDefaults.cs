namespace WireSketch.Language;

/// <summary>Fills in what one part of a spec takes from another, once all of it is read.</summary>
internal static class SpecDefaults
{
    /// <summary>Origins from the settings and from a fuse's own run; the names of zones at the gear in them.</summary>
    public static Spec Fill(Spec spec)
    {
        var zones = spec.Zones.DistinctBy(z => z.Id).ToDictionary(z => z.Id, z => z.DisplayName, StringComparer.Ordinal);
        var origin = spec.Settings.Origin ?? Origin.New;
        return spec with
        {
            Gear =
            [
                .. spec.Gear.Select(g => g with
                {
                    Facts = g.Facts with
                    {
                        Origin = g.Facts.Origin ?? origin,
                        ZoneName = g.Zone is { } zone ? zones.GetValueOrDefault(zone) : null,
                    },
                }),
            ],
            Runs = [.. spec.Runs.Select(r => Fill(r, r.Origin ?? origin))],
        };
    }

    private static Run Fill(Run run, Origin origin) => run with
    {
        Origin = origin,
        Protection = run.Protection is { } device ? device with { Origin = device.Origin ?? origin } : null,
    };
}
