namespace WireSketch.Drawing.Layout.Model;

/// <summary>Sets that grow together: which of a range of numbers belong to one another.</summary>
internal readonly struct DeviceSets
{
    private readonly int[] _parent;

    public DeviceSets(int count)
    {
        _parent = new int[count];
        for (int i = 0; i < count; i++)
        {
            _parent[i] = i;
        }
    }

    public int Of(int i)
    {
        while (_parent[i] != i)
        {
            _parent[i] = _parent[_parent[i]];
            i = _parent[i];
        }

        return i;
    }

    public void Join(int a, int b)
    {
        a = Of(a);
        b = Of(b);
        if (a != b)
        {
            _parent[Math.Max(a, b)] = Math.Min(a, b);
        }
    }
}
