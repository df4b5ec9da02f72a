using System.Globalization;
using System.Text;
using WireSketch.Text;

namespace WireSketch.Cli.Findings;

/// <summary>One line of a file as a terminal shows it, and the line of marks under a stretch of it.</summary>
/// <param name="Text">The line: tabs widened, invisible characters as escapes, a long line cut to what is around the stretch.</param>
/// <param name="Indent">Cells before the marks.</param>
/// <param name="Marks">How many marks, at least one.</param>
internal sealed record Excerpt(string Text, int Indent, int Marks)
{
    private const int TabWidth = 4;
    private const int Widest = 140;
    private const int Lead = 40;

    public static Excerpt Of(SourceSpan at)
    {
        var line = at.File.Line(at.Line);
        var start = Math.Min(at.Column - 1, line.Length);
        var end = at.EndLine > at.Line ? line.Length : Math.Min(at.EndColumn - 1, line.Length);
        var cells = line.EnumerateRunes().Select(Show).ToArray();
        var offsets = Offsets(line);
        var first = offsets.FindIndex(o => o >= start) is >= 0 and var f ? f : cells.Length;
        var last = offsets.FindIndex(o => o >= end) is >= 0 and var l ? l : cells.Length;
        var from = Width(cells.AsSpan(0, last)) > Widest ? Back(cells, first) : 0;
        var text = new StringBuilder(from > 0 ? "…" : "");
        var width = text.Length;
        var to = from;
        for (; to < cells.Length && width + cells[to].Width <= Widest; to++)
        {
            text.Append(cells[to].Text);
            width += cells[to].Width;
        }

        text.Append(to < cells.Length ? "…" : "");
        var indent = (from > 0 ? 1 : 0) + Width(cells.AsSpan(from..first));
        return new(text.ToString(), indent, Math.Max(1, Width(cells.AsSpan(first..Math.Max(first, Math.Min(last, to))))));
    }

    /// <summary>Where in the line each rune begins.</summary>
    private static List<int> Offsets(string line)
    {
        var offsets = new List<int>();
        var at = 0;
        foreach (var rune in line.EnumerateRunes())
        {
            offsets.Add(at);
            at += rune.Utf16SequenceLength;
        }

        return offsets;
    }

    /// <summary>The cell from which on a cut line is shown: somewhat before the stretch.</summary>
    private static int Back((string Text, int Width)[] cells, int first)
    {
        var from = first;
        for (var width = 0; from > 0 && width < Lead; from--)
        {
            width += cells[from - 1].Width;
        }

        return from;
    }

    private static int Width(ReadOnlySpan<(string Text, int Width)> cells)
    {
        var sum = 0;
        foreach (var cell in cells)
        {
            sum += cell.Width;
        }

        return sum;
    }

    private static (string Text, int Width) Show(Rune rune)
    {
        if (rune.Value == '\t')
        {
            return (new string(' ', TabWidth), TabWidth);
        }

        switch (Rune.GetUnicodeCategory(rune))
        {
            case UnicodeCategory.Control or UnicodeCategory.Format or UnicodeCategory.LineSeparator
                or UnicodeCategory.ParagraphSeparator or UnicodeCategory.Surrogate:
                var escape = string.Create(CultureInfo.InvariantCulture, $"\\u{rune.Value:X4}");
                return (escape, escape.Length);
            case UnicodeCategory.NonSpacingMark or UnicodeCategory.EnclosingMark:
                return (rune.ToString(), 0);
            default:
                return (rune.ToString(), IsWide(rune.Value) ? 2 : 1);
        }
    }

    /// <summary>The blocks that terminals draw two cells wide (Unicode Standard Annex 11, the large ranges only).</summary>
    private static bool IsWide(int rune) =>
        rune is (>= 0x1100 and <= 0x115F) or (>= 0x2E80 and <= 0xA4CF) or (>= 0xAC00 and <= 0xD7A3) or (>= 0xF900 and <= 0xFAFF)
            or (>= 0xFE30 and <= 0xFE6F) or (>= 0xFF00 and <= 0xFF60) or (>= 0xFFE0 and <= 0xFFE6) or (>= 0x1F300 and <= 0x1FAFF)
            or (>= 0x20000 and <= 0x3FFFD);
}
