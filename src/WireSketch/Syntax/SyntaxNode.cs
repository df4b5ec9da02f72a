using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>A value in the file: a map, a list, a scalar, or an alias of one of them.</summary>
/// <param name="At">Where it stands: from its first to its last character, brackets and quotes included.</param>
public abstract record SyntaxNode(SourceSpan At)
{
    /// <summary>The value itself; for an alias, the value that it stands for.</summary>
    public virtual SyntaxNode Meant => this;
}

/// <summary>Keys with values, in the order of the file; no key twice.</summary>
public sealed record MapNode(SourceSpan At, ImmutableArray<MapEntry> Entries, bool Flow) : SyntaxNode(At)
{
    private const int Few = 8;

    // Searching entry by entry is faster for a few keys, and far too slow for a file of many thousand.
    private readonly Dictionary<string, MapEntry>? byKey = Entries.Length > Few
        ? Entries.ToDictionary(e => e.Key.Value, StringComparer.Ordinal)
        : null;

    /// <summary>The entry of a key; null if there is none.</summary>
    public MapEntry? Find(string key)
    {
        if (byKey is not null)
        {
            return byKey.GetValueOrDefault(key);
        }

        foreach (var entry in Entries)
        {
            if (entry.Key.Value == key)
            {
                return entry;
            }
        }

        return null;
    }
}

/// <summary>A key and its value.</summary>
public sealed record MapEntry(ScalarNode Key, SyntaxNode Value)
{
    /// <summary>From the key to the end of its value.</summary>
    public SourceSpan At => Value.At.End > Key.At.Start ? new(Key.At.File, Key.At.Start, Value.At.End - Key.At.Start) : Key.At;
}

/// <summary>Values one after the other.</summary>
public sealed record ListNode(SourceSpan At, ImmutableArray<SyntaxNode> Items, bool Flow) : SyntaxNode(At);

/// <summary>A text, a number, a word: always text until somebody asks for more.</summary>
/// <param name="At">Where it stands, quotes included.</param>
/// <param name="Value">The text that is meant.</param>
/// <param name="Style">How it is written.</param>
public sealed record ScalarNode(SourceSpan At, string Value, ScalarForm Style) : SyntaxNode(At)
{
    /// <summary>Nothing is written there, or <c>null</c> or <c>~</c>.</summary>
    public bool IsNull => Style == ScalarForm.Plain && Value is "" or "~" or "null";
}

/// <summary>How a scalar is written.</summary>
public enum ScalarForm
{
    Plain,
    SingleQuoted,
    DoubleQuoted,

    /// <summary>A block that begins with | or &gt;.</summary>
    Block,
}

/// <summary>A use of an earlier value by its anchor's name.</summary>
/// <param name="At">Where the alias stands.</param>
/// <param name="Target">The value it stands for, which stands elsewhere.</param>
public sealed record AliasNode(SourceSpan At, SyntaxNode Target) : SyntaxNode(At)
{
    public override SyntaxNode Meant => Target.Meant;
}

/// <summary>A comment, from its # to the end of its line.</summary>
/// <param name="At">Where it stands.</param>
/// <param name="Inline">Something stands before it on its line.</param>
public sealed record Comment(SourceSpan At, bool Inline);
