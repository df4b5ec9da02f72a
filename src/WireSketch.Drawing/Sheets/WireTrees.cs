using System.Collections.Immutable;
using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Sheets;

/// <summary>Lines of a sheet that share a terminal make one tree.</summary>
internal static class WireTrees
{
    /// <summary>The lines with, as their net, the tree that they are drawn as: lines that share a terminal.</summary>
    public static ImmutableArray<WireLink> Of(List<WireLink> links)
    {
        var trees = new DeviceSets(links.Count);
        var firstAt = new Dictionary<string, int>(StringComparer.Ordinal);
        for (var i = 0; i < links.Count; i++)
        {
            foreach (var end in links[i].To.Append(links[i].From))
            {
                if (!firstAt.TryAdd(end, i))
                {
                    trees.Join(firstAt[end], i);
                }
            }
        }

        return [.. links.Select((l, i) => l with { Net = links[trees.Of(i)].Id })];
    }
}
