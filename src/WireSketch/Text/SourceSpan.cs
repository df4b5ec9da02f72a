namespace WireSketch.Text;

/// <summary>A stretch of a source file.</summary>
/// <param name="File">The file.</param>
/// <param name="Start">First character, from 0.</param>
/// <param name="Length">Number of characters.</param>
public readonly record struct SourceSpan(SourceFile File, int Start, int Length)
{
    public int End => Start + Length;

    /// <summary>Line of the first character, from 1.</summary>
    public int Line => File.LineAt(Start);

    /// <summary>Column of the first character, from 1.</summary>
    public int Column => File.ColumnAt(Start);

    /// <summary>Line of the character after the last, from 1.</summary>
    public int EndLine => File.LineAt(End);

    /// <summary>Column of the character after the last, from 1.</summary>
    public int EndColumn => File.ColumnAt(End);

    /// <summary>The words as they stand in the file.</summary>
    public string Words => File.Text.Substring(Start, Length);

    /// <summary>Whether the other span lies inside this one.</summary>
    public bool Holds(SourceSpan other) => ReferenceEquals(File, other.File) && other.Start >= Start && other.End <= End;

    public override string ToString() => $"{File.Name}:{Line}:{Column}";
}
