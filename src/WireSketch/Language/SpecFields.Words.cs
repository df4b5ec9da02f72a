using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>Values that are one of a few words.</summary>
internal sealed partial class SpecFields
{
    protected override Written<string>? Word(string key, string holds, ImmutableArray<string> words, string? otherwise = null)
    {
        taken.Add((key, words));
        return Scalar(key, $"one of {string.Join(", ", words)}") is { } s && IsWord(key, s, words) ? Written(s, Spelling.Value(s.Value)) : null;
    }

    protected override ImmutableArray<Written<string>> Words(string key, string holds, ImmutableArray<string> words) =>
        [.. Scalars(key).Where(s => IsWord(key, s, words)).Select(s => Written(s, Spelling.Value(s.Value)))];

    private bool IsWord(string key, ScalarNode s, ImmutableArray<string> words)
    {
        if (words.Contains(Spelling.Value(s.Value)))
        {
            return true;
        }

        if (s.Value is ['(', .. var inside, ')'])
        {
            Report(new("spec/value", Severity.Error, $"a list stands in square brackets; this is \"{s.Value}\"", s.At)
            {
                Help = $"write {key}: [{inside}]",
                Fixes = [new($"write [{inside}]", [new(s.At, $"[{inside}]")])],
            });
            return false;
        }

        var nearest = TradeWords.Value(s.Value, words);
        Report(new("spec/value", Severity.Error, $"{key} is one of {string.Join(", ", words)}; this is \"{s.Value}\"", s.At)
        {
            Help = nearest is null ? null : $"write {key}: {nearest}, if that is what is meant",
            Fixes = nearest is null ? [] : [new($"write {nearest}", [new(s.At, nearest)])],
        });
        return false;
    }

    /// <summary>Says what is probably meant, and takes nothing.</summary>
    private Written<T>? Meant<T>(ScalarNode s, string trouble, string better)
        where T : struct
    {
        Report(new(char.IsAsciiDigit(s.Value.TrimEnd()[^1]) ? "spec/unit" : "spec/value", Severity.Error, trouble, s.At)
        {
            Help = $"write {better}",
            Fixes = s.At.Words == s.Value ? [new($"write {better}", [new(s.At, better)])] : [],
        });
        return null;
    }
}
