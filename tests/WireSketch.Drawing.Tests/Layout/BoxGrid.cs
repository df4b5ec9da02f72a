using WireSketch.Drawing.Layout;

namespace WireSketch.Drawing.Tests.Layout;

/// <summary>Boxes by the squares they lie in.</summary>
internal sealed class BoxGrid
{
    private const int Side = 64;
    private readonly Dictionary<(int, int), List<int>> cells = [];

    public BoxGrid(IEnumerable<GridRect> boxes)
    {
        int i = 0;
        foreach (var b in boxes)
        {
            foreach (var cell in Cells(b.X, b.Y, b.Right, b.Bottom))
            {
                if (!cells.TryGetValue(cell, out var list))
                {
                    cells.Add(cell, list = []);
                }

                list.Add(i);
            }

            i++;
        }
    }

    public IEnumerable<int> Near(int left, int top, int right, int bottom)
    {
        var seen = new SortedSet<int>();
        foreach (var cell in Cells(left, top, right, bottom))
        {
            if (cells.TryGetValue(cell, out var list))
            {
                seen.UnionWith(list);
            }
        }

        return seen;
    }

    private static IEnumerable<(int, int)> Cells(int left, int top, int right, int bottom)
    {
        for (int x = left / Side; x <= right / Side; x++)
        {
            for (int y = top / Side; y <= bottom / Side; y++)
            {
                yield return (x, y);
            }
        }
    }
}
