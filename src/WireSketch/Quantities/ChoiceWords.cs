using System.Collections.Immutable;

namespace WireSketch.Quantities;

/// <summary>The words by which a spec names a choice, in the order of the reference page: one table for each choice.</summary>
/// <typeparam name="T">The choice.</typeparam>
public sealed class ChoiceWords<T>
    where T : struct, Enum
{
    private readonly ImmutableArray<(T Value, string Word)> table;

    public ChoiceWords(params ImmutableArray<(T Value, string Word)> table) => this.table = table;

    /// <summary>All words.</summary>
    public ImmutableArray<string> All => [.. table.Select(t => t.Word)];

    /// <summary>The word of a value.</summary>
    public string this[T value] => table.First(t => EqualityComparer<T>.Default.Equals(t.Value, value)).Word;

    /// <summary>The value that a word names; null if it names none.</summary>
    public T? Find(string word) => table.Where(t => t.Word == word).Select(t => (T?)t.Value).FirstOrDefault();

    /// <summary>A word of the table as the value it names, with its place.</summary>
    internal Written<T> Of(Written<string> word) => new(Find(word.Value)!.Value, word.Words, word.At);
}
