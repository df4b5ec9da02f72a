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
            int old = Array.BinarySearch(before.Graph.Columns.Key, after.Graph.Columns.Key[c]);
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
            bool dummy = before.Graph.IsDummy(a[k]);
            if (dummy != after.Graph.IsDummy(b[k])
                || (dummy ? before.Graph.DummyKey[a[k] - before.Graph.Model.Bodies] != after.Graph.DummyKey[b[k] - after.Graph.Model.Bodies]
                    : a[k] != b[k] || before.Graph.Choices.Turned[a[k]] != after.Graph.Choices.Turned[b[k]]
                        || before.Graph.NodeOnRight.AsSpan(
                            before.Graph.Model.BodySlot[a[k]],
                            before.Graph.Model.BodySlot[a[k] + 1] - before.Graph.Model.BodySlot[a[k]])
                            .SequenceEqual(after.Graph.NodeOnRight.AsSpan(
                                after.Graph.Model.BodySlot[b[k]],
                                after.Graph.Model.BodySlot[b[k] + 1] - after.Graph.Model.BodySlot[b[k]]))
                            == false))
            {
                return false;
            }
        }

        return true;
    }
}
