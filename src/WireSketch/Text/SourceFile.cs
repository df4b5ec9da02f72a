using System.Collections.Immutable;

namespace WireSketch.Text;

/// <summary>A text with a name, and where its lines begin. Positions are UTF-16 indexes from 0; lines and columns count from 1.</summary>
public sealed class SourceFile
{
    private readonly ImmutableArray<int> lineStarts;

    /// <param name="name">The name to show, as the user gave it; never an absolute path of the machine.</param>
    /// <param name="text">The whole text, without a byte order mark.</param>
    public SourceFile(string name, string text)
    {
        Name = name;
        Text = text;
        var starts = ImmutableArray.CreateBuilder<int>();
        starts.Add(0);
        for (var i = 0; i < text.Length; i++)
        {
            if (text[i] == '\n' || (text[i] == '\r' && (i + 1 == text.Length || text[i + 1] != '\n')))
            {
                starts.Add(i + 1);
            }
        }

        lineStarts = starts.ToImmutable();
    }

    public string Name { get; }

    public string Text { get; }

    public int LineCount => lineStarts.Length;

    /// <summary>The line that holds an index, from 1.</summary>
    public int LineAt(int index)
    {
        var found = lineStarts.BinarySearch(index);
        return found >= 0 ? found + 1 : ~found;
    }

    /// <summary>The column of an index in its line, from 1.</summary>
    public int ColumnAt(int index) => index - lineStarts[LineAt(index) - 1] + 1;

    /// <summary>The index of the first character of a line (from 1).</summary>
    public int LineStart(int line) => lineStarts[line - 1];

    /// <summary>The text of a line (from 1), without its line end.</summary>
    public string Line(int line)
    {
        var start = lineStarts[line - 1];
        var end = line < lineStarts.Length ? lineStarts[line] : Text.Length;
        while (end > start && Text[end - 1] is '\r' or '\n')
        {
            end--;
        }

        return Text[start..end];
    }

    /// <summary>The span of the whole first line: where to point when a file as a whole is meant.</summary>
    public SourceSpan Start => new(this, 0, Line(1).Length);

    public override string ToString() => Name;
}
