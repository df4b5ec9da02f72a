using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Syntax;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>What the files named under <c>use</c> bring along.</summary>
/// <param name="Files">The files, in the order in which they are named.</param>
/// <param name="Roots">Their top-level maps.</param>
internal sealed record SharedFiles(ImmutableArray<SourceFile> Files, ImmutableArray<MapNode> Roots)
{
    /// <summary>Reads them. What is missing, named twice or holds more than it may is a finding.</summary>
    internal static SharedFiles Read(SyntaxTree tree, ISpecFiles files, SpecFindings findings)
    {
        var read = ImmutableArray.CreateBuilder<SourceFile>();
        var roots = ImmutableArray.CreateBuilder<MapNode>();
        foreach (var name in Named(tree.Root))
        {
            if (files.Read(tree.File, name.Value, out var why) is not { } file)
            {
                findings.Add(new(
                    "spec/use",
                    Severity.Error,
                    $"\"{name.Value}\" cannot be used: {why}",
                    name.At)
                { Help = "write its path as seen from this file" });
                findings.Broken = true;
                continue;
            }

            if (file.Name == tree.File.Name || read.Any(f => f.Name == file.Name))
            {
                findings.Add(new(
                    "spec/use",
                    Severity.Error,
                    file.Name == tree.File.Name ? "the file uses itself" : $"\"{name.Value}\" is named twice",
                    name.At)
                { Help = "leave this entry out" });
                continue;
            }

            var (used, found) = SyntaxTree.Parse(file);
            findings.AddRange(found);
            findings.Broken |= used.Broken;
            if (!SpecVersion.Check(used, findings))
            {
                findings.Broken = true;
                continue;
            }

            foreach (var entry in used.Root.Entries.Where(e => !SpecKeys.Shared.Contains(e.Key.Value)))
            {
                var nearest = Nearest.To(entry.Key.Value, SpecKeys.Shared);
                findings.Add(new(
                    "spec/use",
                    Severity.Error,
                    $"{file.Name} is named under use, so it may hold parts, wires and zones, but it has \"{entry.Key.Value}\"",
                    entry.Key.At)
                {
                    Help = nearest is null ? "move it into the spec itself" : $"write {nearest}, if that is what is meant",
                    Notes = [new("used here", name.At)],
                });
            }

            read.Add(file);
            roots.Add(used.Root);
        }

        return new(read.ToImmutable(), roots.ToImmutable());
    }

    /// <summary>The entries of a key in all files and then in the spec itself, each id once; a second one is a finding.</summary>
    internal ImmutableArray<MapEntry> Entries(string key, MapNode root, SpecFindings findings)
    {
        var entries = ImmutableArray.CreateBuilder<MapEntry>();
        var seen = new Dictionary<string, MapEntry>(StringComparer.Ordinal);
        foreach (var entry in Roots.Append(root).Select(r => r.Find(key)?.Value.Meant).OfType<MapNode>().SelectMany(m => m.Entries))
        {
            if (!seen.TryAdd(entry.Key.Value, entry) && seen[entry.Key.Value] is var first)
            {
                findings.Add(new(
                    "spec/id",
                    Severity.Error,
                    $"\"{entry.Key.Value}\" is described twice under {key}; the other one is in {first.Key.At.File.Name}, line "
                        + $"{first.Key.At.Line}",
                    entry.Key.At)
                {
                    Help = "give one of them another name",
                    Notes = [new("the first one", first.Key.At)],
                });
            }
            else
            {
                entries.Add(entry);
            }
        }

        return entries.ToImmutable();
    }

    /// <summary>All files and the spec itself as fields, to read what lies under a shared key.</summary>
    internal IEnumerable<SpecFields> Fields(SpecFindings findings) =>
        Roots.Select(r => new SpecFields(findings, new(r.At.File.Name, r.At.File.Name, new SourceSpan(r.At.File, 0, 0)), [r]));

    private static IEnumerable<ScalarNode> Named(MapNode root) => root.Find("use")?.Value.Meant switch
    {
        ListNode list => list.Items.Select(i => i.Meant).OfType<ScalarNode>().Where(s => !s.IsNull),
        ScalarNode { IsNull: false } one => [one],
        _ => [],
    };
}
