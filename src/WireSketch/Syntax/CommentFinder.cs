using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>Finds comments: every # after a blank or at the start of a line that stands in no scalar.</summary>
internal static class CommentFinder
{
    internal static ImmutableArray<Comment> Find(SourceFile file, string text, int end, MapNode root)
    {
        var scalars = new List<(int Start, int End)>();
        Gather(root, scalars);
        scalars.Sort();
        var found = ImmutableArray.CreateBuilder<Comment>();
        var next = 0;
        for (var i = 0; i < end; i++)
        {
            while (next < scalars.Count && scalars[next].End <= i)
            {
                next++;
            }

            if (next < scalars.Count && scalars[next].Start <= i)
            {
                i = scalars[next].End - 1;
            }
            else if (text[i] == '#' && (i == 0 || char.IsWhiteSpace(text[i - 1])))
            {
                var line = file.LineAt(i);
                var stop = file.LineStart(line) + file.Line(line).Length;
                found.Add(new(
                    new SourceSpan(file, i, stop - i),
                    Inline: text.AsSpan(file.LineStart(line), i - file.LineStart(line)).Trim().Length > 0));
                i = stop;
            }
        }

        return found.ToImmutable();
    }

    private static void Gather(SyntaxNode node, List<(int Start, int End)> scalars)
    {
        switch (node)
        {
            case MapNode map:
                foreach (var entry in map.Entries)
                {
                    Gather(entry.Key, scalars);
                    Gather(entry.Value, scalars);
                }

                break;
            case ListNode list:
                foreach (var item in list.Items)
                {
                    Gather(item, scalars);
                }

                break;
            case ScalarNode { At.Length: > 0 } scalar:
                scalars.Add((scalar.At.Start, scalar.At.End));
                break;
        }
    }
}
