using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>The columns of a sheet from left to right. Between and beside them lie the channels: channel c is left of column c.</summary>
internal sealed class ColumnPlan
{
    /// <summary>Zone of each column; for a wall the zone before it.</summary>
    public required int[] Zone { get; init; }

    public required bool[] IsWall { get; init; }

    /// <summary>What a column is known by when others come and go.</summary>
    public required long[] Key { get; init; }

    /// <summary>Column of each body.</summary>
    public required int[] Of { get; init; }

    public int Count => Zone.Length;

    public static ColumnPlan From(SheetModel model, int[] sub)
    {
        var keys = new List<long>();
        bool[] used = new bool[model.Zones];
        for (int b = 0; b < model.Bodies; b++)
        {
            keys.Add(KeyOf(model.BodyZone[b], sub[b]));
            used[model.BodyZone[b]] = true;
        }

        for (int z = 0; z < model.Zones; z++)
        {
            if (!used[z])
            {
                keys.Add(KeyOf(z, 0));
            }

            if (model.Graph.Zones[z].WallAfter && z + 1 < model.Zones)
            {
                keys.Add(KeyOf(z, int.MaxValue));
            }
        }

        keys.Sort();
        int count = 0;
        for (int i = 0; i < keys.Count; i++)
        {
            if (i == 0 || keys[i] != keys[i - 1])
            {
                keys[count++] = keys[i];
            }
        }

        long[] key = [.. keys.Take(count)];
        int[] of = new int[model.Bodies];
        for (int b = 0; b < of.Length; b++)
        {
            of[b] = Array.BinarySearch(key, KeyOf(model.BodyZone[b], sub[b]));
        }

        return new ColumnPlan
        {
            Key = key,
            Zone = Array.ConvertAll(key, k => (int)(k >> 32)),
            IsWall = Array.ConvertAll(key, k => (int)(uint)k == int.MaxValue),
            Of = of,
        };
    }

    private static long KeyOf(int zone, int sub) => ((long)zone << 32) | (uint)sub;
}
