using System.Collections.Immutable;
using WireSketch.Drawing.Fonts;

namespace WireSketch.Drawing.Sheets;

/// <summary>Breaks text into lines of a width.</summary>
internal static class LineBreaker
{
    /// <summary>
    /// Lines no wider than asked, broken at spaces; a word that is too wide by itself is cut. What does not fit the last line ends in an
    /// ellipsis.
    /// </summary>
    public static ImmutableArray<string> Break(
        string text, Points width, Points size, FontWeight weight = FontWeight.Regular, int most = int.MaxValue)
    {
        var lines = ImmutableArray.CreateBuilder<string>();
        var line = "";
        var words = new Queue<string>(FontMetrics.Settable(text).Split(' ', StringSplitOptions.RemoveEmptyEntries));
        while (words.TryDequeue(out var word))
        {
            if (word.Contains(DeviceLabels.Unbroken, StringComparison.Ordinal) && !Fits(word))
            {
                words = new(word.Split(DeviceLabels.Unbroken).Concat(words));
                continue;
            }

            var longer = line.Length == 0 ? word : line + " " + word;
            if (Fits(longer))
            {
                line = longer;
                continue;
            }

            if (line.Length == 0)
            {
                line = Cut(word);
            }
            else if (lines.Count + 1 < most)
            {
                lines.Add(line);
                line = Fits(word) ? word : Cut(word);
            }
            else
            {
                lines.Add(Cut(longer));
                return [.. lines.Select(l => l.Replace(DeviceLabels.Unbroken, ' '))];
            }
        }

        if (line.Length > 0)
        {
            lines.Add(line);
        }

        return [.. lines.Select(l => l.Replace(DeviceLabels.Unbroken, ' '))];

        bool Fits(string candidate) => FontMetrics.Width(candidate, size, weight) <= width;

        string Cut(string candidate)
        {
            var kept = candidate;
            while (kept.Length > 1 && !Fits(kept.TrimEnd() + "…"))
            {
                kept = kept[..^(char.IsLowSurrogate(kept[^1]) ? 2 : 1)];
            }

            return kept.TrimEnd() + "…";
        }
    }
}
