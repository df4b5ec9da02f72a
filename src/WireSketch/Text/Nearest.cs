namespace WireSketch.Text;

/// <summary>Finds the word that somebody probably meant.</summary>
public static class Nearest
{
    private const int Most = 1000;
    private const int LeastBeginning = 3;

    /// <summary>
    /// The known word nearest to what was written, or null if none is near: at most a third of its letters may be added, lost,
    /// changed or swapped with a neighbor. Capitals and the difference between a blank, a dash and an underscore do not count.
    /// Of very many words the first thousand are looked at. Three letters or more that only one word begins with mean that word.
    /// </summary>
    public static string? To(string written, IEnumerable<string> known)
    {
        var word = Plain(written);
        if (word.Length > 100)
        {
            return null;
        }

        string? best = null;
        string? begun = null;
        var beginnings = 0;
        var least = int.MaxValue;
        foreach (var candidate in known.Take(Most))
        {
            if (word.Length >= LeastBeginning && candidate != begun && Plain(candidate).StartsWith(word, StringComparison.Ordinal))
            {
                (begun, beginnings) = (candidate, beginnings + 1);
            }

            var distance = Distance(word, Plain(candidate));
            if (distance < least
                && distance <= Math.Max(1, Math.Max(word.Length, candidate.Length) / 3)
                && distance < Math.Max(word.Length, candidate.Length))
            {
                (best, least) = (candidate, distance);
            }
        }

        return beginnings == 1 && least > 0 ? begun : best;
    }

    /// <summary>Known words, the likeliest first; equals in the order of their letters.</summary>
    public static IEnumerable<string> Order(string written, IEnumerable<string> known) =>
        known.OrderBy(k => Distance(Plain(written), Plain(k))).ThenBy(k => k, StringComparer.Ordinal);

    /// <summary>The least number of letters added, lost, changed, or swapped with a neighbor, that turns one word into the other.</summary>
    internal static int Distance(string a, string b)
    {
        var before = new int[b.Length + 1];
        var above = new int[b.Length + 1];
        var row = new int[b.Length + 1];
        for (var j = 0; j <= b.Length; j++)
        {
            above[j] = j;
        }

        for (var i = 1; i <= a.Length; i++)
        {
            row[0] = i;
            for (var j = 1; j <= b.Length; j++)
            {
                var cost = a[i - 1] == b[j - 1] ? 0 : 1;
                row[j] = Math.Min(Math.Min(row[j - 1] + 1, above[j] + 1), above[j - 1] + cost);
                if (i > 1 && j > 1 && a[i - 1] == b[j - 2] && a[i - 2] == b[j - 1])
                {
                    row[j] = Math.Min(row[j], before[j - 2] + 1);
                }
            }

            (before, above, row) = (above, row, before);
        }

        return above[b.Length];
    }

    private static string Plain(string word) => word.ToLowerInvariant().Replace('_', '-').Replace(' ', '-');
}
