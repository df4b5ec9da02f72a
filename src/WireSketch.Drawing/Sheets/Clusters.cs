using System.Collections.Immutable;
using WireSketch.Drawing.Layout.Model;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>
/// Parts the devices of a circuit into sheets: devices joined by a run stay together as long as their sheet holds them, runs within
/// a zone first, so that few runs are cut; what is left over shares sheets in order.
/// </summary>
internal static class Clusters
{
    /// <summary>A device with more runs than this in a circuit is shown again on every sheet that has one of them.</summary>
    private const int MostRunsOnOneSheet = 8;

    /// <summary>Devices that so many runs meet at that they are shown again on each sheet; none if the circuit fits on one.</summary>
    public static IReadOnlySet<string> Hubs(ImmutableArray<WiredRun> runs, int limit) =>
        runs.SelectMany(Gear).DistinctBy(g => g.Id).Sum(Weight) <= limit * 4
            ? ImmutableHashSet<string>.Empty
            : runs.SelectMany(r => Gear(r).Select(g => g.Id).Distinct())
                .GroupBy(id => id, StringComparer.Ordinal)
                .Where(g => g.Count() > MostRunsOnOneSheet)
                .Select(g => g.Key)
                .ToHashSet(StringComparer.Ordinal);

    /// <summary>Sets of devices, one for each sheet.</summary>
    /// <param name="runs">The circuit's runs.</param>
    /// <param name="hubs">Devices that do not count, as they stand on several sheets.</param>
    /// <param name="limit">Most boxes on a sheet.</param>
    public static ImmutableArray<IReadOnlySet<string>> Of(ImmutableArray<WiredRun> runs, IReadOnlySet<string> hubs, int limit)
    {
        var gear = runs.SelectMany(Gear).DistinctBy(g => g.Id).Where(g => !hubs.Contains(g.Id)).ToArray();
        var number = gear.Select((g, i) => (g.Id, i)).ToDictionary(p => p.Id, p => p.i, StringComparer.Ordinal);
        var sets = new DeviceSets(gear.Length);
        var weight = gear.Select(Weight).ToArray();
        var joints = runs.SelectMany(r => Gear(r).Skip(1).Select(g => (A: r.From[0].Gear, B: g, Run: r)))
            .Where(j => !ReferenceEquals(j.A, j.B) && !hubs.Contains(j.A.Id) && !hubs.Contains(j.B.Id))
            .GroupBy(j => (number[j.A.Id], number[j.B.Id]))
            .OrderByDescending(g => IsPendant(g.First().A) || IsPendant(g.First().B)).ThenByDescending(g => g.Count())
            .ThenByDescending(g => g.First().A.Zone == g.First().B.Zone).ThenBy(g => g.Key).ToArray();
        foreach (var joint in joints)
        {
            var (a, b) = (sets.Of(joint.Key.Item1), sets.Of(joint.Key.Item2));
            var holders = joint.Count(j => j.Run.Holder is not null);
            if (a != b && weight[a] + weight[b] + holders <= limit * 4)
            {
                sets.Join(a, b);
                weight[sets.Of(a)] = weight[a] + weight[b] + (holders * 2);
            }
        }

        return Pack(
            [.. gear.GroupBy(g => sets.Of(number[g.Id])).OrderBy(g => g.Key).Select(g => (g.Select(x => x.Id).ToArray(), weight[g.Key]))],
            limit * 4);
    }

    /// <summary>How much room a device takes, in quarters of a box.</summary>
    public static int Weight(Gear gear) => gear.Drawing.Form switch
    {
        DrawnForm.GroundPoint => 1,
        DrawnForm.EndPoint => 3,
        _ => 4,
    };

    private static bool IsPendant(Gear gear) => gear.Drawing.Form is DrawnForm.GroundPoint or DrawnForm.EndPoint;

    private static IEnumerable<Gear> Gear(WiredRun run) => run.From.Concat(run.To).Select(e => e.Gear);

    private static ImmutableArray<IReadOnlySet<string>> Pack((string[] Ids, int Weight)[] clusters, int limit)
    {
        var sheets = new List<(HashSet<string> Ids, int Weight)>();
        foreach (var (ids, weight) in clusters)
        {
            var place = sheets.FindIndex(s => s.Weight + weight <= limit);
            if (place < 0)
            {
                sheets.Add((new(ids, StringComparer.Ordinal), weight));
            }
            else
            {
                sheets[place].Ids.UnionWith(ids);
                sheets[place] = (sheets[place].Ids, sheets[place].Weight + weight);
            }
        }

        return [.. sheets.Select(s => (IReadOnlySet<string>)s.Ids)];
    }
}
