using WireSketch.Diagnostics;

namespace WireSketch.Language;

/// <summary>Looks whether the names within a spec name something, and whether they name one thing only.</summary>
internal static class SpecNames
{
    internal static void Check(Spec spec, SpecFindings findings)
    {
        var gear = spec.Gear.ToDictionary(g => g.Id, StringComparer.Ordinal);
        foreach (var run in spec.Runs)
        {
            if (gear.TryGetValue(run.Id, out var same))
            {
                findings.Add(new("spec/id", Severity.Error, $"\"{run.Id}\" names a device and a run", run.Name.At)
                {
                    Help = "give one of them another name: labels and findings go by it",
                    Notes = [new("the device", same.Name.At)],
                    Subjects = [run.Id],
                });
            }
        }

        if (spec.Broken)
        {
            return;
        }

        var zones = spec.Zones.Select(z => z.Id).ToHashSet(StringComparer.Ordinal);
        var paths = spec.Paths.Select(p => p.Id).ToHashSet(StringComparer.Ordinal);
        var wires = spec.Wires.Select(w => w.Id).ToHashSet(StringComparer.Ordinal);
        foreach (var g in spec.Gear)
        {
            if (g.Facts.Zone is { } zone && !zones.Contains(zone.Value))
            {
                findings.Add(
                    References.Finding(
                        zone.Value, zone.At, "zone", spec.Zones.Select(z => z.Id), "declare it under zones") with
                    { Subjects = [g.Id] });
            }

            if (g is Kinds.LevelControl { To: { } to } && !gear.ContainsKey(to.Value.Split('.')[0]) && !spec.Unread.Contains(to.Value))
            {
                findings.Add(
                    References.Finding(
                        to.Value, to.At, "device", spec.Gear.Select(x => x.Id), "name the device it is plugged "
                            + "into") with
                    { Subjects = [g.Id] });
            }

            if (g is Kinds.Amplifier amplifier)
            {
                foreach (var with in amplifier.Channels.Select(c => c.BridgesWith).OfType<Quantities.Written<string>>())
                {
                    if (amplifier.Channels.All(c => c.Name.Value != with.Value))
                    {
                        findings.Add(
                            References.Finding(
                                with.Value,
                                with.At,
                                $"channel of {g.Id}",
                                amplifier.Channels.Select(c => c.Name.Value),
                                "name another of its channels") with
                            { Subjects = [g.Id] });
                    }
                }
            }
        }

        Places(spec, findings);
        foreach (var run in spec.Runs)
        {
            foreach (var path in run.Along.Where(a => !paths.Contains(a.Value)))
            {
                findings.Add(
                    References.Finding(
                        path.Value, path.At, "path", spec.Paths.Select(p => p.Id), "declare it under paths") with
                    { Subjects = [run.Id] });
            }

            if (run.Wire is { TypeId: { } type, Words: var words } && !wires.Contains(type))
            {
                findings.Add(
                    References.Finding(
                        type,
                        words.At,
                        "wire type",
                        spec.Wires.Select(w => w.Id),
                        "declare it under wires, or write the size first: 4 AWG red") with
                    { Subjects = [run.Id] });
            }
        }
    }

    /// <summary>A path begins and ends in a zone, at the place of a device, or where another path goes on.</summary>
    private static void Places(Spec spec, SpecFindings findings)
    {
        var ends = spec.Paths.SelectMany(p => new[] { (Path: p, At: p.From), (Path: p, At: p.To) })
            .Where(e => e.At is not null)
            .Select(e => (e.Path, At: e.At!.Value))
            .ToArray();
        var shared = ends.GroupBy(e => e.At.Value, StringComparer.OrdinalIgnoreCase)
            .Where(g => g.Select(e => e.Path.Id).Distinct(StringComparer.Ordinal).Count() > 1)
            .Select(g => g.Key);
        string[] places = [.. spec.Zones.Select(z => z.Id), .. spec.Gear.Select(g => g.Facts.Place?.Value).OfType<string>()];
        var known = places.Concat(shared).ToHashSet(StringComparer.OrdinalIgnoreCase);
        foreach (var (path, at) in ends.Where(e => !known.Contains(e.At.Value)))
        {
            findings.Add(
                References.Finding(
                    at.Value,
                    at.At,
                    "zone or place",
                    places.Distinct(StringComparer.OrdinalIgnoreCase),
                    "name a zone, the place of a device, or where another path begins or ends") with
                { Subjects = [path.Id] });
        }
    }
}
