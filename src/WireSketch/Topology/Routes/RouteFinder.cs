using System.Collections.Immutable;
using WireSketch.Language;
using WireSketch.Quantities;

namespace WireSketch.Topology.Routes;

/// <summary>The shortest way over the vehicle's paths. A path may be followed either way; one without a length leads nowhere.</summary>
internal sealed class RouteFinder
{
    private readonly ImmutableArray<VehiclePath> paths;
    private readonly ILookup<string, (VehiclePath Path, string There)> from;
    private readonly Dictionary<string, Dictionary<string, Best>> known = new(StringComparer.OrdinalIgnoreCase);

    public RouteFinder(ImmutableArray<VehiclePath> paths)
    {
        this.paths = [.. paths.Where(p => p is { From: not null, To: not null, Length.Value.Value: > 0 })];
        from = this.paths.SelectMany(p =>
            new[]
            {
                (Here: p.From!.Value.Value, Path: p, There: p.To!.Value.Value),
                (Here: p.To!.Value.Value, Path: p, There: p.From!.Value.Value)
            })
            .ToLookup(x => x.Here, x => (x.Path, x.There), StringComparer.OrdinalIgnoreCase);
    }

    /// <summary>
    /// Where a device stands on the net of paths: its place if a path begins or ends there, else its zone; null if none does.
    /// </summary>
    public string? NodeOf(Gear gear) => new[] { gear.Facts.Place?.Value, gear.Zone }.FirstOrDefault(n => n is not null && from.Contains(n));

    /// <summary>The way to the farthest of several places; empty if one of them cannot be reached, or if all are where it begins.</summary>
    public ImmutableArray<VehiclePath> Farthest(string start, IEnumerable<string> ends)
    {
        var farthest = ImmutableArray<VehiclePath>.Empty;
        var longest = 0.0;
        foreach (var end in ends)
        {
            if (!From(start).TryGetValue(end, out var best))
            {
                return [];
            }

            if (best.Length > longest)
            {
                (farthest, longest) = (Way(start, end), best.Length);
            }
        }

        return farthest;
    }

    /// <summary>The shortest way; of equally long ones that over fewer paths, then the one that stands first in the file.</summary>
    public ImmutableArray<VehiclePath> Way(string start, string end)
    {
        var best = From(start);
        var way = new List<VehiclePath>();
        for (var here = end; best.TryGetValue(here, out var b) && b.By is { } path; here = b.Before!)
        {
            way.Add(path);
        }

        way.Reverse();
        return [.. way];
    }

    public static Meters Length(ImmutableArray<VehiclePath> way) => new(way.Sum(p => p.Length!.Value.Value.Value));

    /// <summary>Dijkstra's algorithm from one place to all.</summary>
    private Dictionary<string, Best> From(string start)
    {
        if (known.TryGetValue(start, out var found))
        {
            return found;
        }

        var best = new Dictionary<string, Best>(StringComparer.OrdinalIgnoreCase) { [start] = new(0, 0, null, null) };
        var queue = new PriorityQueue<string, (double, int, int)>();
        var done = new HashSet<string>(StringComparer.OrdinalIgnoreCase);
        var order = 0;
        queue.Enqueue(start, (0, 0, order));
        while (queue.TryDequeue(out var here, out _))
        {
            if (!done.Add(here))
            {
                continue;
            }

            var soFar = best[here];
            foreach (var (path, there) in from[here])
            {
                var (length, count) = (soFar.Length + path.Length!.Value.Value.Value, soFar.Count + 1);
                if (!best.TryGetValue(there, out var old) || (length, count).CompareTo((old.Length, old.Count)) < 0)
                {
                    best[there] = new(length, count, path, here);
                    queue.Enqueue(there, (length, count, ++order));
                }
            }
        }

        return known[start] = best;
    }

    private sealed record Best(double Length, int Count, VehiclePath? By, string? Before);
}
