using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Syntax;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>Reads a spec: its text into typed records, with every slip in it as a finding.</summary>
public static class SpecReader
{
    /// <summary>
    /// Reads a file and the files it uses. Never throws for what is written in them. What could not be understood is left out of
    /// the spec and reported; <see cref="Spec.Broken"/> and <see cref="Spec.Unread"/> say what later stages must not call missing.
    /// </summary>
    /// <param name="file">The spec.</param>
    /// <param name="files">The door to the files that it names.</param>
    public static Outcome<Spec> Read(SourceFile file, ISpecFiles files)
    {
        var (tree, slips) = SyntaxTree.Parse(file);
        var findings = new SpecFindings { Broken = tree.Broken };
        findings.AddRange(slips);
        if (!SpecVersion.Check(tree, findings))
        {
            return new(new Spec { File = file, Broken = true }, findings.InOrder());
        }

        tree = WiresForRuns(tree, findings);
        findings.Broken |= tree.Root.Entries.Any(e => !SpecKeys.Order.Contains(e.Key.Value));
        var shared = SharedFiles.Read(tree, files, findings);
        var parts = shared.Entries("parts", tree.Root, findings);
        var gear = new GearReader(parts.ToImmutableDictionary(p => p.Key.Value, StringComparer.Ordinal));
        var onlyShared = IsShared(tree.Root);
        var top = new SpecFields(findings, new("the spec", "", tree.File.Start), [tree.Root], partial: onlyShared);
        var spec = SpecKeys.Read(top, file, f => f.ReadGear(gear), f => ReadPart(gear, f));
        top.Finish("a spec");

        // Where all gear is refused as one, no end of a run can be found.
        findings.Broken |= tree.Root.Find("gear") is { Value.Meant: not MapNode };
        var (zones, wires) = ReadShared(shared, findings, gear);
        spec = spec with
        {
            Used = shared.Files,
            Parts = [.. parts.Select(p => new Written<string>(p.Key.Value, p.Key.Value, p.Key.At))],
            Zones = ZonesOr(Once(zones.AddRange(spec.Zones), z => z.Name, "zones", findings), file),
            Wires = Once(wires.AddRange(spec.Wires), w => w.Name, "wires", findings),
            Unread = [
                .. gear.Unread.Concat(Unread(tree.Root, "gear", spec.Gear.Select(g => g.Id)))
                    .Concat(Unread(tree.Root, "runs", spec.Runs.Select(r => r.Id)))
                    .Distinct(StringComparer.Ordinal)
            ],
            Doubtful = [.. gear.Doubtful],
            Broken = findings.Broken,
            OnlyShared = onlyShared,
            Responses = ResponseFiles.Read(file, files, spec.Responses, findings),
        };
        spec = SpecDefaults.Fill(spec);
        SpecNames.Check(spec, findings);
        return new(spec, findings.InOrder());
    }

    /// <summary>Whether a file holds nothing but parts, wires and zones for other specs: a folder of specs passes it by.</summary>
    public static bool IsShared(SourceFile file) => IsShared(SyntaxTree.Parse(file).Value.Root);

    private static bool IsShared(MapNode root) =>
        root.Entries.Length > 1 && root.Entries.All(e => SpecKeys.Shared.Contains(e.Key.Value));

    private static Gear? ReadPart(GearReader gear, Fields f)
    {
        f.ReadPart(gear);
        return null;
    }

    private static (ImmutableArray<Zone> Zones, ImmutableArray<WireType> Wires) ReadShared(
        SharedFiles shared, SpecFindings findings, GearReader gear)
    {
        var zones = ImmutableArray.CreateBuilder<Zone>();
        var wires = ImmutableArray.CreateBuilder<WireType>();
        foreach (var fields in shared.Fields(findings))
        {
            var more = SpecKeys.ReadShared(fields, f => ReadPart(gear, f));
            zones.AddRange(more.Zones);
            wires.AddRange(more.Wires);
        }

        return (zones.ToImmutable(), wires.ToImmutable());
    }

    private static ImmutableArray<T> Once<T>(ImmutableArray<T> all, Func<T, Written<string>> name, string key, SpecFindings findings)
    {
        var kept = ImmutableArray.CreateBuilder<T>();
        var seen = new Dictionary<string, SourceSpan>(StringComparer.Ordinal);
        foreach (var one in all)
        {
            var own = name(one);
            if (seen.TryAdd(own.Value, own.At))
            {
                kept.Add(one);
                continue;
            }

            var first = seen[own.Value];
            findings.Add(new(
                "spec/id",
                Severity.Error,
                $"\"{own.Value}\" is described twice under {key}; the other one is in {first.File.Name}, line {first.Line}",
                own.At)
            {
                Help = "give one of them another name",
                Notes = [new("the first one", first)],
            });
        }

        return kept.ToImmutable();
    }

    /// <summary>Runs that stand under <c>wires</c> are reported once, and read as what they are.</summary>
    private static SyntaxTree WiresForRuns(SyntaxTree tree, SpecFindings findings)
    {
        if (tree.Root.Find("runs") is not null
            || tree.Root.Find("wires") is not { Value.Meant: MapNode { Entries: [{ Value.Meant: MapNode first }, ..] } } wires
            || (first.Find("from") ?? first.Find("to")) is null)
        {
            return tree;
        }

        findings.Add(new("spec/unknown-key", Severity.Error, "types of wire stand under wires; these go from one terminal to another", wires.Key.At)
        {
            Help = "write runs:",
            Fixes = [new("write runs", [new(wires.Key.At, "runs")])],
        });
        var entries = tree.Root.Entries.Replace(wires, wires with { Key = wires.Key with { Value = "runs" } });
        return tree with { Root = tree.Root with { Entries = entries } };
    }

    /// <summary>The zones that are named, or the usual four.</summary>
    private static ImmutableArray<Zone> ZonesOr(ImmutableArray<Zone> named, SourceFile file) => named.Length > 0
        ? named
        : [.. Zone.DefaultIds.Select(id => Zone.Usual(new(id, id, new SourceSpan(file, 0, 0))))];

    private static IEnumerable<string> Unread(MapNode root, string key, IEnumerable<string> read) =>
        root.Find(key)?.Value.Meant is MapNode map ? map.Entries.Select(e => e.Key.Value).Except(read, StringComparer.Ordinal) : [];
}
