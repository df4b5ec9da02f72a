using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Syntax;

/// <summary>Slips within braces that YAML can read, but as something else than what was meant.</summary>
internal static class FlowSlips
{
    /// <summary>
    /// A comma in a text without quotes: what stands behind it is a key without colon and value. Gives the finding, and the entry
    /// before with the whole text if that is plain; null if there is no such slip.
    /// </summary>
    internal static (Finding Finding, MapEntry? Before)? CommaInText(
        SourceFile file, string text, IReadOnlyList<MapEntry> entries, ScalarNode key, SyntaxNode value)
    {
        if (entries.Count == 0
            || key.Style != ScalarForm.Plain
            || value is not ScalarNode { At.Length: 0 }
            || key.Value.Contains('=', StringComparison.Ordinal)
            || key.Value.Contains(':', StringComparison.Ordinal)
            || text.AsSpan(key.At.End).TrimStart() is not [',' or '}', ..]
            || entries[^1].Value is not ScalarNode { Style: ScalarForm.Plain, At.Length: > 0 } before
            || Quantity.NumberLength(before.Value) > 0)
        {
            return null;
        }

        var all = new SourceSpan(file, before.At.Start, key.At.End - before.At.Start);
        var name = entries[^1].Key.Value;
        var isCurly = before.Value[0] is '“' or '”' or '„' or '‘' or '’';
        var plain = text[all.Start..key.At.End].Trim('“', '”', '„', '‘', '’');
        var mended = plain is ['(', .. var inside, ')'] ? $"[{inside}]" : $"\"{plain}\"";
        return (
            new(
                SyntaxTree.Rule,
                Severity.Error,
                isCurly ? "curly quotation marks are part of the text and hold nothing together"
                    : $"the comma before \"{key.Value}\" ends the text before it: within braces it parts two entries",
                isCurly ? before.At : key.At)
            {
                Help = isCurly ? $"use straight ones: {name}: {mended}"
                    : mended[0] == '[' ? $"write {name}: {mended}" : $"put the text in quotes: {name}: {mended}",
                Fixes = [new($"write {mended}", [new(all, mended)])],
            },
            new(entries[^1].Key, new ScalarNode(all, plain, ScalarForm.Plain)));
    }

    /// <summary>
    /// In a flow map <c>{a: 15,5 ft}</c> is an entry and a key without a value: says so, and goes on with what was meant.
    /// </summary>
    internal static (Finding Finding, MapEntry Mended)? CommaInNumber(SourceFile file, MapEntry before, ScalarNode key, SyntaxNode value)
    {
        if (before.Value is not ScalarNode { Style: ScalarForm.Plain } number
            || key.Style != ScalarForm.Plain
            || value is not ScalarNode { At.Length: 0 }
            || key.At.Start != number.At.End + 1 || DecimalComma.In($"{number.Value},{key.Value}") is not var (whole, rest))
        {
            return null;
        }

        var (better, help) = DecimalComma.Mend(whole, rest);
        var all = new SourceSpan(file, number.At.Start, key.At.End - number.At.Start);
        var slip = new Finding(
            SyntaxTree.Rule,
            Severity.Error,
            $"the comma in \"{all.Words}\" parts two entries: decimals stand behind a point, and thousands are not parted",
            all)
        { Help = help };
        return (slip, new(before.Key, new ScalarNode(all, better, ScalarForm.Plain)));
    }
}
