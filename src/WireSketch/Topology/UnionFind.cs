namespace WireSketch.Topology;

/// <summary>Sets that grow together; each is named by its lowest member.</summary>
internal sealed class UnionFind
{
    private readonly int[] parent;

    public UnionFind(int count)
    {
        parent = new int[count];
        for (var i = 0; i < count; i++)
        {
            parent[i] = i;
        }
    }

    public int Root(int i)
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
        var (x, y) = (Root(a), Root(b));
        parent[Math.Max(x, y)] = Math.Min(x, y);
    }
}
