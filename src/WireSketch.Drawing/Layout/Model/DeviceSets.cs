namespace WireSketch.Drawing.Layout.Model;

/// <summary>Sets that grow together: which of a range of numbers belong to one another.</summary>
internal readonly struct DeviceSets
{
    private readonly int[] parent;

    public DeviceSets(int count)
    {
        parent = new int[count];
        for (int i = 0; i < count; i++)
        {
            parent[i] = i;
        }
    }

    public int Of(int i)
    {
        while (parent[i] != i)
        {
            parent[i] = parent[parent[i]];
            i = parent[i];
        }

        return i;
    }

    public void Join(int a, int b)
    {
        a = Of(a);
        b = Of(b);
        if (a != b)
        {
            parent[Math.Max(a, b)] = Math.Min(a, b);
        }
    }
}
