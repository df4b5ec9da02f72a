namespace WireSketch.Text;

/// <summary>Finds the name that was probably meant.</summary>
public static class Nearest
{
    /// <summary>The candidate that the fewest slips turn into the word, if they are few for its length; null otherwise.</summary>
    public static string? To(string word, IEnumerable<string> candidates)
    {
        var best = candidates.Select(c => (Name: c, Slips: Slips(word, c))).OrderBy(x => x.Slips).ThenBy(x => x.Name, StringComparer.Ordinal).FirstOrDefault();
        return best.Name is not null && best.Slips <= Math.Max(1, Math.Max(word.Length, best.Name.Length) / 3) ? best.Name : null;
    }

    /// <summary>The candidates, the likeliest first.</summary>
    public static IEnumerable<string> Order(string word, IEnumerable<string> candidates) => candidates.OrderBy(c => Slips(word, c)).ThenBy(c => c, StringComparer.Ordinal);

    /// <summary>Letters to insert, drop, change or swap with a neighbour (the distance of Damerau, restricted form), case counting for nothing.</summary>
    public static int Slips(string a, string b)
    {
        var rows = new int[a.Length + 1, b.Length + 1];
        for (var i = 0; i <= a.Length; i++)
        {
            rows[i, 0] = i;
        }

        for (var j = 0; j <= b.Length; j++)
        {
            rows[0, j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            for (var j = 1; j <= b.Length; j++)
            {
                var same = char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 1]) ? 0 : 1;
                rows[i, j] = Math.Min(Math.Min(rows[i - 1, j] + 1, rows[i, j - 1] + 1), rows[i - 1, j - 1] + same);
                if (i > 1 && j > 1 && char.ToLowerInvariant(a[i - 1]) == char.ToLowerInvariant(b[j - 2]) && char.ToLowerInvariant(a[i - 2]) == char.ToLowerInvariant(b[j - 1]))
                {
                    rows[i, j] = Math.Min(rows[i, j], rows[i - 2, j - 2] + 1);
                }
            }
        }

        return rows[a.Length, b.Length];
    }
}
