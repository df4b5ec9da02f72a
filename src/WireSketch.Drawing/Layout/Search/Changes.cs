using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>Tells in which columns two orders differ.</summary>
internal static class Changes
{
    public static bool[] Between(ColumnOrder before, ColumnOrder after)
    {
        bool[] changed = new bool[after.Items.Length];
        for (int c = 0; c < changed.Length; c++)
        {
            int old = Array.BinarySearch(before.Wiring.Columns.Key, after.Wiring.Columns.Key[c]);
            changed[c] = old < 0 || !Same(before, old, after, c);
        }

        return changed;
    }

    private static bool Same(ColumnOrder before, int old, ColumnOrder after, int column)
    {
        int[] a = before.Items[old], b = after.Items[column];
        if (a.Length != b.Length || (old != column && before.Items.Length == after.Items.Length))
        {
            return false;
        }

        for (int k = 0; k < a.Length; k++)
        {
            bool lane = before.Wiring.IsLane(a[k]);
            if (lane != after.Wiring.IsLane(b[k])
                || (lane ? before.Wiring.LaneKey[a[k] - before.Wiring.Model.Bodies] != after.Wiring.LaneKey[b[k] - after.Wiring.Model.Bodies]
                    : a[k] != b[k] || before.Wiring.Choices.Turned[a[k]] != after.Wiring.Choices.Turned[b[k]]
                        || before.Wiring.NodeOnRight.AsSpan(before.Wiring.Model.BodySlot[a[k]], before.Wiring.Model.BodySlot[a[k] + 1] - before.Wiring.Model.BodySlot[a[k]])
                            .SequenceEqual(after.Wiring.NodeOnRight.AsSpan(after.Wiring.Model.BodySlot[b[k]], after.Wiring.Model.BodySlot[b[k] + 1] - after.Wiring.Model.BodySlot[b[k]])) == false))
            {
                return false;
            }
        }

        return true;
    }
}
