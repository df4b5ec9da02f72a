using WireSketch.Syntax;
using WireSketch.Text;

namespace WireSketch.Testing;

/// <summary>The same spec with its gear and its runs written in another order.</summary>
public static class FileOrder
{
    /// <summary>
    /// Shuffles the entries of <c>gear</c> and <c>runs</c>; those whose order means something keep theirs among each other.
    /// </summary>
    /// <param name="file">A spec whose gear and runs stand on lines of their own.</param>
    /// <param name="random">Decides the order.</param>
    /// <param name="keeps">Whether an entry of this id keeps its order.</param>
    public static SourceFile Shuffled(SourceFile file, Random random, Func<string, bool> keeps)
    {
        var root = SyntaxTree.Parse(file).Value.Root;
        var text = file.Text;
        foreach (var key in ((string[])["gear", "runs"]).OrderByDescending(k => root.Find(k)!.Key.At.Start))
        {
            var entries = ((MapNode)root.Find(key)!.Value).Entries;
            var starts = entries.Select(e => file.LineStart(e.Key.At.Line)).Append(text.IndexOf('\n', entries[^1].At.End) + 1).ToArray();
            var blocks = entries.Select((e, i) => (Id: e.Key.Value, Words: text[starts[i]..starts[i + 1]].TrimEnd('\n') + "\n")).ToArray();
            var kept = new Queue<string>(blocks.Where(b => keeps(b.Id)).Select(b => b.Words));
            random.Shuffle(blocks);
            var words = string.Concat(blocks.Select(b => keeps(b.Id) ? kept.Dequeue() : b.Words));
            var gap = text[starts[0]..starts[^1]].EndsWith("\n\n", StringComparison.Ordinal) ? "\n" : "";
            text = string.Concat(text.AsSpan(0, starts[0]), words, gap, text.AsSpan(starts[^1]));
        }

        return new(file.Name, text);
    }
}
