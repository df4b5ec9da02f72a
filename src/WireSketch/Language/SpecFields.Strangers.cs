using WireSketch.Diagnostics;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>Keys that nobody asked for, and what is probably meant by them.</summary>
internal sealed partial class SpecFields
{
    /// <summary>Reports every key that nobody asked for, with the nearest that somebody did, and every key that is missing.</summary>
    /// <param name="of">What the map describes, in words: "an amplifier".</param>
    internal void Finish(string of)
    {
        // A key that is mistyped is not missing as well: one slip, one finding.
        foreach (var (keys, finding) in missing)
        {
            if (!layers[0].Entries.Any(e =>
                !asked.ContainsKey(Spelling.Key(e.Key.Value))
                    && (TradeWords.Key(e.Key.Value, keys) is not null
                        || keys.Any(k => e.Key.Value.StartsWith(k + " ", StringComparison.Ordinal)))))
            {
                Report(finding);
            }
        }

        missing.Clear();
        foreach (var layer in layers)
        {
            var strangers = new List<ScalarNode>();
            foreach (var key in layer.Entries.Select(e => e.Key).Where(k => !IsAsked(layer, k)))
            {
                if (TradeWords.Key(WithoutEquals(key.Value), asked.Keys) is not { } nearest)
                {
                    strangers.Add(key);
                    continue;
                }

                Report(new("spec/unknown-key", Severity.Error, $"{of} has no key \"{key.Value}\"", key.At)
                {
                    Help = WithoutEquals(key.Value) == key.Value
                        ? $"write {nearest}, if that is what is meant"
                        : $"write {nearest}: {key.Value.Split('=', 2)[1].Trim()}, with a colon for the equals sign",
                    Fixes = WithoutEquals(key.Value) == key.Value ? [new($"write {nearest}", [new(key.At, nearest)])] : [],
                });
            }

            ReportStrangers(of, strangers);
        }
    }

    /// <summary>Many keys that are like none of the map's own are one slip: they belong elsewhere, and are reported as one.</summary>
    private void ReportStrangers(string of, List<ScalarNode> strangers)
    {
        if (strangers.Count > 3)
        {
            Report(new(
                "spec/unknown-key",
                Severity.Error,
                $"{of} has no key \"{strangers[0].Value}\", and none of {strangers.Count - 1} other keys that stand here",
                strangers[0].At)
            {
                Help = "see whether the heading above them is missing, or whether they are indented too deep",
                Notes = [.. strangers.Skip(1).Select(s => new FindingNote($"\"{s.Value}\" is unknown here too", s.At))],
            });
            return;
        }

        foreach (var key in strangers)
        {
            var kinds = LanguageReference.Whole.KindsWith(key.Value).Select(k => k.Word).ToArray();
            Report(new("spec/unknown-key", Severity.Error, $"{of} has no key \"{key.Value}\"", key.At)
            {
                Help = (kinds.Length > 0 ? $"it is a key of {string.Join(", ", kinds)}; " : "")
                    + $"the keys here are {string.Join(", ", asked.Keys)}",
            });
        }
    }

    /// <summary>A key that somebody asked for; one that stands in both spellings is reported.</summary>
    private bool IsAsked(MapNode layer, ScalarNode key)
    {
        var us = Spelling.Key(key.Value);
        if (us != key.Value && asked.ContainsKey(us) && layer.Find(us) is { } same)
        {
            Report(new("spec/duplicate-key", Severity.Error, $"\"{key.Value}\" is the same key as \"{us}\"", key.At)
            {
                Help = "keep one of them",
                Notes = [new($"\"{us}\" stands here", same.Key.At)],
            });
        }

        return asked.ContainsKey(us);
    }

    private static string WithoutEquals(string key) => key.Split('=', 2)[0].Trim();

    /// <summary>The key of a map that takes a word, with the word; null if none does.</summary>
    private string? KeyFor<T>(string word, Func<Fields, T?> read)
        where T : class
    {
        var trial = new SpecFields(new(), Key, [new MapNode(At, [], Flow: true)], partial: true);
        read(trial);
        return trial.taken.Where(t => t.Words.Contains(word)).Select(t => $"{t.Key}: {word}").FirstOrDefault();
    }
}
