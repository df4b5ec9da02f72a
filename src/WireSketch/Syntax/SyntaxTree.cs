using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>A file as keys and values with their places; what they mean is not known yet.</summary>
/// <param name="File">The file.</param>
/// <param name="Root">Its top-level keys; empty if nothing could be understood.</param>
/// <param name="Comments">Its comments, in order.</param>
/// <param name="Broken">Part of the file could not be read: what is missing from the tree may stand in the file.</param>
public sealed record SyntaxTree(SourceFile File, MapNode Root, ImmutableArray<Comment> Comments, bool Broken)
{
    /// <summary>The most characters a file may have.</summary>
    public const int LargestFile = 16 * 1024 * 1024;

    /// <summary>The most levels of maps and lists inside each other.</summary>
    public const int DeepestNesting = 64;

    /// <summary>The most values that the aliases of a file may stand for, all told.</summary>
    public const int MostAliased = 10_000;

    internal const string Rule = "spec/syntax";

    /// <summary>
    /// Reads YAML 1.2. Every slip is a finding with its place, and one slip hides nothing: what cannot be read is left out at the
    /// smallest entry that holds it. Refused, each with a word on what to do instead: tabs as indentation, duplicate keys, merge
    /// keys, tags, directives, several documents, characters that cannot be seen.
    /// </summary>
    public static Outcome<SyntaxTree> Parse(SourceFile file)
    {
        var findings = ImmutableArray.CreateBuilder<Finding>();
        if (file.Text.Length > LargestFile)
        {
            findings.Add(new(
                Rule,
                Severity.Error,
                $"the file has {file.Text.Length} characters; {LargestFile} is the most",
                new SourceSpan(file, 0, 0))
            {
                Help = "split it: parts, wires and zones may stand in files of their own, named under use",
            });
            return new(Nothing(file), findings.ToImmutable());
        }

        if (PlainText.Check(file, findings) is not { } text)
        {
            return new(Nothing(file), findings.ToImmutable());
        }

        var end = Preamble.Check(file, ref text, findings);
        var reader = new BlockReader(file, text, findings);
        var root = reader.ReadRoot(end);
        if (root is ScalarNode { IsNull: true })
        {
            root = null;
        }

        if (root is not (null or MapNode))
        {
            findings.Add(new(
                Rule,
                Severity.Error,
                $"a spec is made of keys with values; this is {(root is ListNode ? "a list" : "a text")}",
                root.At with { Length = Math.Min(root.At.Length, file.Line(root.At.Line).Length) })
            {
                Help = "begin with wiresketch: 1, then job:, gear: and runs:",
            });
        }

        var map = root as MapNode ?? new MapNode(new SourceSpan(file, 0, 0), [], Flow: false);
        var comments = CommentFinder.Find(file, text, end, map);
        return new(new(file, map, comments, reader.Broken || root is not (null or MapNode)), [.. Finding.InOrder(findings)]);
    }

    private static SyntaxTree Nothing(SourceFile file) =>
        new(file, new MapNode(new SourceSpan(file, 0, 0), [], Flow: false), [], Broken: true);
}
