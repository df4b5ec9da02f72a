using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>Reads gear: its own map over that of its part, by its kind.</summary>
/// <param name="parts">All parts that can be named, with their maps.</param>
internal sealed class GearReader(ImmutableDictionary<string, MapEntry> parts)
{
    private readonly HashSet<string> used = new(StringComparer.Ordinal);
    private readonly List<string> unread = [];
    private readonly List<string> doubtful = [];

    /// <summary>Ids of gear that could not be understood.</summary>
    internal IEnumerable<string> Unread => unread;

    /// <summary>Ids of gear with a key that was not understood: it may have terminals that are not known.</summary>
    internal IEnumerable<string> Doubtful => doubtful;

    /// <summary>Reads a device; null if its kind is unknown.</summary>
    internal Gear? Read(SpecFields own)
    {
        var (below, complete) = PartsOf(own);
        var fields = own.Over(below);
        var kind = KindOf(fields, complete);
        if (own.Key.Value.IndexOf('.', StringComparison.Ordinal) is > 0 and var dot)
        {
            // Names of its terminals are cut at the first dot: what seems to be another device is this one.
            unread.Add(own.Key.Value[..dot]);
        }

        if (kind is null)
        {
            unread.Add(own.Key.Value);
            GearProperties.Read(fields);
            fields.LeaveAll(but: fields.Has("is") ? null : "is");
            return null;
        }

        var before = fields.Findings.Misunderstood;
        var gear = Describe(fields, kind);
        if (fields.Findings.Misunderstood > before)
        {
            doubtful.Add(gear.Id);
        }

        TerminalNames(gear, fields);
        return gear;
    }

    /// <summary>Looks at a part by itself, if no gear has done so.</summary>
    internal void ReadAlone(SpecFields own)
    {
        var part = own.AsPartial();
        if (used.Contains(own.Key.Value))
        {
            part.LeaveAll();
        }
        else if (part.Has("is") && KindOf(part, complete: true) is { } kind)
        {
            Describe(part, kind);
        }
        else
        {
            GearProperties.Read(part);
            foreach (var any in part.Has("is") ? [] : GearKinds.All)
            {
                // Of no kind yet: a key of any kind will do, and its value is read with the kind.
                KeysOfAnyKind(part, any);
            }

            if (part.Has("is"))
            {
                part.LeaveAll();
            }
        }

        part.Finish($"the part {own.Key.Value}");
    }

    private static void KeysOfAnyKind(SpecFields part, GearKind kind)
    {
        var keys = new SpecFields(new SpecFindings(), part.Key, part.Layers, partial: true);
        kind.Read(keys);
        part.AskAll(keys);
    }

    private static Gear Describe(SpecFields fields, GearKind kind)
    {
        var gear = kind.Read(fields) with { Facts = GearProperties.Read(fields) };
        fields.Finish(Article(kind.Word));
        return gear;
    }

    private static GearKind? KindOf(SpecFields fields, bool complete)
    {
        var word = fields.Text("is", "the kind of gear");
        if (word is not { } written)
        {
            if (fields.Has("is"))
            {
                return null;
            }

            var words = GearKinds.All.Select(k => k.Word).ToArray();
            if (fields.Layers.SelectMany(l => l.Entries).FirstOrDefault(e => IsKind(e, words)) is { Value.Meant: ScalarNode named } slip)
            {
                var meant = TradeWords.Kind(named.Value, words)!;
                fields.Report(new("spec/unknown-key", Severity.Error, $"the kind of gear stands under is, not under {slip.Key.Value}", slip.Key.At)
                {
                    Help = $"write is: {meant}",
                    Fixes = [new($"write is: {meant}", [new(slip.At, $"is: {meant}")])],
                });
            }
            else if (complete)
            {
                fields.Require("is");
            }

            return null;
        }

        var kind = GearKinds.Of(written.Value);
        if (kind is null)
        {
            var words = GearKinds.All.Select(k => k.Word);
            var nearest = TradeWords.Kind(written.Value, words);
            fields.Report(new("spec/unknown-kind", Severity.Error, $"there is no kind of gear called \"{written.Value}\"", written.At)
            {
                Help = nearest is null ? $"the kinds are {string.Join(", ", words)}" : $"write is: {nearest}, if that is what is meant",
                Fixes = nearest is null ? [] : [new($"write {nearest}", [new(written.At, nearest)])],
            });
        }

        foreach (var layer in fields.Layers)
        {
            if (kind is not null && layer.Find("is")?.Value.Meant is ScalarNode { IsNull: false } other && other.Value != written.Value)
            {
                fields.Report(new(
                    "spec/value",
                    Severity.Error,
                    $"{fields.Key.Value} is {Article(written.Value)}, but its part is {Article(other.Value)}",
                    written.At)
                {
                    Help = "leave is: out here, or name another part",
                    Notes = [new("the part says so here", other.At)],
                });
            }
        }

        return kind;
    }

    /// <summary>Whether a kind of gear stands under a word that only means <c>is</c>.</summary>
    private static bool IsKind(MapEntry entry, string[] words) =>
        TradeWords.Key(entry.Key.Value, ["is"]) is not null
        && entry.Value.Meant is ScalarNode { IsNull: false } named
        && TradeWords.Kind(named.Value, words) is not null;

    /// <summary>The maps of the part that a device names, and of the part that this one names, and so on.</summary>
    private (ImmutableArray<MapNode> Below, bool Complete) PartsOf(SpecFields own)
    {
        var below = ImmutableArray.CreateBuilder<MapNode>();
        var seen = new List<string>();
        var entry = own.Entry("part");
        while (entry?.Value.Meant is ScalarNode { IsNull: false } name)
        {
            if (!parts.TryGetValue(name.Value, out var part))
            {
                own.ReportUnlessBroken(References.Finding(
                    name.Value,
                    name.At,
                    "part",
                    parts.Keys.Order(StringComparer.Ordinal),
                    "declare it under parts, or in a file named under use"));
                return (below.ToImmutable(), false);
            }

            if (seen.Contains(name.Value))
            {
                own.Report(new(
                    "spec/reference",
                    Severity.Error,
                    $"the part {name.Value} is described by itself",
                    name.At) { Help = "name another part, or leave part: out" });
                break;
            }

            seen.Add(name.Value);
            used.Add(name.Value);
            if (part.Value.Meant is not MapNode map)
            {
                return (below.ToImmutable(), false);
            }

            below.Add(map);
            entry = map.Find("part");
        }

        return (below.ToImmutable(), true);
    }

    /// <summary>Names that the user gave to channels and groups must not be those of other terminals of the device.</summary>
    private static void TerminalNames(Gear gear, SpecFields fields)
    {
        foreach (var twice in gear.Terminals.GroupBy(t => t.Name, StringComparer.Ordinal).Where(g => g.Count() > 1))
        {
            var at = fields.Layers.SelectMany(l => l.Entries)
                .Select(e => e.Value.Meant)
                .OfType<MapNode>()
                .Select(m => m.Find(twice.Key)?.Key.At)
                .FirstOrDefault(k => k is not null);
            fields.Report(new("spec/id", Severity.Error, $"{gear.Id} would have two terminals called \"{twice.Key}\"", at ?? gear.Name.At)
            {
                Help = $"{Article(gear.Kind)} has terminals of its own; call this one something else, such as {twice.Key}-1",
            });
        }
    }

    private static string Article(string noun) =>
        (noun.Length > 0 && "aeiou".Contains(noun[0], StringComparison.Ordinal) ? "an " : "a ") + noun;
}
