using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Moves bodies between the sub-columns of their zone.</summary>
internal static class SubColumns
{
    private const int Most = 4;

    /// <summary>
    /// Sub-column keys after a move one column to the left or right, or to a new column there; the same array if that is not possible.
    /// </summary>
    public static int[] Move(SheetModel model, int[] sub, List<int> movers, int lead, int way, bool asNew)
    {
        var keys = Keys(model, sub, model.BodyZone[lead]);
        int k = keys.IndexOf(sub[lead]), target;
        if (asNew && keys.Count < Math.Max(Most, 1 + (model.Bodies / 40)))
        {
            int next = k + way;
            target = next < 0 ? keys[0] - 1024 : next == keys.Count ? keys[^1] + 1024 : (keys[k] + keys[next]) / 2;
            if (target == keys[k] || (next >= 0 && next < keys.Count && target == keys[next]) || target < 0)
            {
                return Move(model, Respaced(model, sub), movers, lead, way, asNew);
            }
        }
        else
        {
            if (k + way < 0 || k + way >= keys.Count)
            {
                return sub;
            }

            target = keys[k + way];
        }

        int[] moved = (int[])sub.Clone();
        foreach (int b in movers)
        {
            moved[b] = target;
        }

        return moved;
    }

    private static List<int> Keys(SheetModel model, int[] sub, int zone)
    {
        var keys = new List<int>();
        for (int b = 0; b < sub.Length; b++)
        {
            if (model.BodyZone[b] == zone && !keys.Contains(sub[b]))
            {
                keys.Add(sub[b]);
            }
        }

        keys.Sort();
        return keys;
    }

    private static int[] Respaced(SheetModel model, int[] sub)
    {
        int[] spaced = (int[])sub.Clone();
        for (int z = 0; z < model.Zones; z++)
        {
            var keys = Keys(model, sub, z);
            for (int b = 0; b < sub.Length; b++)
            {
                if (model.BodyZone[b] == z)
                {
                    spaced[b] = (keys.IndexOf(sub[b]) + 8) * P1Columns.Choices.SubStep;
                }
            }
        }

        return spaced;
    }
}
