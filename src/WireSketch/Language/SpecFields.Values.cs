using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>Single values: quantities, words, texts, numbers.</summary>
internal sealed partial class SpecFields
{
    public override Written<T>? Amount<T>(string key, string holds, string? otherwise = null, bool zero = false) =>
        Scalar(key, $"{T.Noun}, such as {Limits.Example<T>()}") is { } s && ReadAmount<T>(s, s.Value, zero, out var value)
            ? Written(s, value)
            : null;

    public override Written<T?>? AmountOrAuto<T>(string key, string holds)
    {
        if (Scalar(key, $"{T.Noun}, or auto") is not { } s)
        {
            return null;
        }

        if (s.Value == "auto")
        {
            return Written<T?>(s, null);
        }

        return ReadAmount<T>(s, s.Value, zero: false, out var value) ? Written<T?>(s, value) : null;
    }

    public override Written<Range<T>>? AmountRange<T>(string key, string holds, string? otherwise = null)
    {
        if (Scalar(key, $"{T.Noun} or a range, such as {Limits.Example<T>()}") is not { } s)
        {
            return null;
        }

        if (!RangeWords.Split(s.Value, out var first, out var last))
        {
            if (AmountCures.Range<T>(s.Value) is { } meant)
            {
                return Meant<Range<T>>(s, $"a range is written with to; this is \"{s.Value}\"", meant);
            }

            return ReadAmount<T>(s, s.Value, zero: false, out var only) ? Written(s, new Range<T>(only, only)) : null;
        }

        // "80 to 2500 Hz": the unit may stand once, at the end.
        if (!ReadAmount<T>(s, last, zero: false, out var most)
            || !ReadAmount<T>(
                s,
                Quantity.NumberLength(first) == first.Length ? first + last[Quantity.NumberLength(last)..] : first,
                zero: true,
                out var least))
        {
            return null;
        }

        if (least.Value > most.Value)
        {
            Report(new(
                "spec/value",
                Severity.Error,
                $"the range \"{s.Value}\" runs downwards",
                s.At)
            { Help = $"write {last} to {first}" });
            return null;
        }

        return Written(s, new Range<T>(least, most));
    }

    public override Written<Multiple<T>>? AmountMultiple<T>(string key, string holds)
    {
        if (Scalar(key, $"{T.Noun} or a multiple, such as 2 x {Limits.Example<T>()}") is not { } s)
        {
            return null;
        }

        var words = s.Value.Trim();
        var digits = Quantity.NumberLength(words);
        var rest = words[digits..].TrimStart();
        if (AmountCures.Multiple<T>(words) is { } meant && meant.Split(" x ")[0] is var many
            && !(words.StartsWith(many, StringComparison.Ordinal) && Quantity.TryRead<T>(rest.TrimStart('x', 'X', '×', ' '), out _, out _))
            && !Quantity.TryRead<T>(words, out _, out _))
        {
            return Meant<Multiple<T>>(
                s,
                $"\"{words}\" is not how many, then {T.Noun} in {Quantity.UnitList<T>()}",
                meant);
        }

        if (digits == 0 || rest.Length == 0 || rest[0] is not ('x' or 'X' or '×'))
        {
            return ReadAmount<T>(s, words, zero: false, out var only) ? Written(s, new Multiple<T>(1, only)) : null;
        }

        if (!int.TryParse(words.AsSpan(0, digits), NumberStyles.None, CultureInfo.InvariantCulture, out var count) || count is < 1 or > 64)
        {
            Report(new(
                "spec/value",
                Severity.Error,
                $"{words[..digits]} is no number of {key}: whole numbers from 1 to 64 are",
                s.At)
            { Help = $"write how many and what each is, such as 2 x {Limits.Example<T>()}" });
            return null;
        }

        return ReadAmount<T>(s, rest[1..].Trim(), zero: false, out var each) ? Written(s, new Multiple<T>(count, each)) : null;
    }

    public override Written<WireSize>? Size(string key, string holds) =>
        Scalar(key, "a size of wire, such as 4 AWG or 21 mm2") is { } s && ReadSize(s, s.Value, out var size) ? Written(s, size) : null;

    public override Written<Range<WireSize>>? SizeRange(string key, string holds)
    {
        if (Scalar(key, "a range of sizes, such as 8 AWG to 1/0 AWG") is not { } s)
        {
            return null;
        }

        if (!RangeWords.Split(s.Value, out var first, out var last))
        {
            return ReadSize(s, s.Value, out var only) ? Written(s, new Range<WireSize>(only, only)) : null;
        }

        var unit = last.Split(' ', 2) is [_, var u] ? u : "";
        if (!ReadSize(s, last, out var b)
            || !ReadSize(s, first.All(c => char.IsAsciiDigit(c) || c is '/' or '.') ? $"{first} {unit}" : first, out var a))
        {
            return null;
        }

        return Written(s, a <= b ? new Range<WireSize>(a, b) : new Range<WireSize>(b, a));
    }

    public override Written<string>? Text(string key, string holds, string? otherwise = null)
    {
        if (Scalar(key, "a text") is not { } s)
        {
            return null;
        }

        if (string.IsNullOrWhiteSpace(s.Value))
        {
            NoValue(Entry(key)!);
            return null;
        }

        return Written(s, s.Value);
    }

    public override T? Worded<T>(string key, string holds, Func<Written<string>, T?> read)
        where T : class => Scalar(key, "a single value") is { } s ? read(Written(s, s.Value)) : null;

    public override ImmutableArray<Written<string>> Texts(string key, string holds) => [.. Scalars(key).Select(s => Written(s, s.Value))];

    public override Written<bool>? Flag(string key, string holds, string? otherwise = null)
    {
        if (Scalar(key, "true or false") is not { } s)
        {
            return null;
        }

        if (s is { Style: ScalarForm.Plain, Value: "true" or "false" })
        {
            return Written(s, s.Value == "true");
        }

        var meant = s.Value.ToLowerInvariant() switch
        {
            "yes" or "on" or "true" or "y" or "1" => "true",
            "no" or "off" or "false" or "n" or "0" => "false",
            _ => null,
        };
        Report(new("spec/value", Severity.Error, $"{key} is true or false; this is {s.At.Words}", s.At)
        {
            Help = meant is null ? $"write {key}: true or {key}: false"
                : $"write {key}: {meant}{(s.Style == ScalarForm.Plain ? "" : ", without the quotes")}",
            Fixes = meant is null ? [] : [new($"write {meant}", [new(s.At, meant)])],
        });
        return null;
    }

    public override Written<int>? Count(string key, string holds, string? otherwise = null, int least = 1, int most = 1000)
    {
        if (Scalar(key, "a whole number") is not { } s)
        {
            return null;
        }

        if (int.TryParse(s.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var count) && count >= least && count <= most)
        {
            return Written(s, count);
        }

        Report(new(
            "spec/value",
            Severity.Error,
            $"{key} is a whole number from {least} to {most}; this is \"{s.Value}\"",
            s.At)
        { Help = $"write the number alone, such as {key}: {Math.Max(least, 2)}" });
        return null;
    }

    public override Written<double>? Number(string key, string holds)
    {
        if (Scalar(key, "a plain number") is not { } s)
        {
            return null;
        }

        if (Quantity.NumberLength(s.Value) == s.Value.Length && s.Value.Length < 30)
        {
            var number = double.Parse(s.Value, NumberStyles.Float, CultureInfo.InvariantCulture);
            if (number >= 0)
            {
                return Written(s, number);
            }

            Report(new("spec/value", Severity.Error, $"{key} is less than nothing: {s.Value}", s.At));
            return null;
        }

        Report(new("spec/value", Severity.Error, $"{key} is a plain number; this is \"{s.Value}\"", s.At)
        {
            Help = $"write digits with a decimal point, such as {key}: 12.50; job.currency names the currency",
        });
        return null;
    }

    public override ImmutableArray<(Written<TKey> Key, Written<TValue> Value)> Table<TKey, TValue>(string key, string holds) =>
        Rows<TKey, TValue>(
            key,
            (name) => ReadAmount<TKey>(name, name.Value, zero: false, out var k) ? k : null,
            (a, b) => a.CompareTo(b) == 0);

    public override ImmutableArray<(Written<int> Key, Written<TValue> Value)> Numbered<TValue>(string key, string holds) =>
        Rows<int, TValue>(
            key,
            name =>
            {
                if (int.TryParse(name.Value, NumberStyles.None, CultureInfo.InvariantCulture, out var n) && n is >= 1 and <= 1000)
                {
                    return n;
                }

                Report(new(
                    "spec/value",
                    Severity.Error,
                    $"\"{name.Value}\" is no number from 1 to 1000",
                    name.At)
                { Help = $"write {key}: {{ 1: … }}" });
                return null;
            },
            (a, b) => a == b);

    private ImmutableArray<(Written<TKey> Key, Written<TValue> Value)> Rows<TKey, TValue>(
        string key, Func<ScalarNode, TKey?> readKey, Func<TKey, TKey, bool> same)
        where TKey : struct
        where TValue : struct, IQuantity<TValue>
    {
        Ask(key);
        var rows = new List<(Written<TKey> Key, Written<TValue> Value)>();
        foreach (var map in Stack(key, layers).Reverse())
        {
            var here = new List<TKey>();
            foreach (var entry in map.Entries)
            {
                if (readKey(entry.Key) is not { } k
                    || ScalarOf(entry, $"{TValue.Noun}, such as {Limits.Example<TValue>()}") is not { } s
                    || !ReadAmount<TValue>(s, s.Value, zero: false, out var value))
                {
                    continue;
                }

                if (here.Any(h => same(h, k)))
                {
                    Report(new(
                        "spec/duplicate-key",
                        Severity.Error,
                        $"\"{entry.Key.Value}\" says the same as another key of {key}",
                        entry.Key.At)
                    { Help = "keep one of them" });
                    continue;
                }

                here.Add(k);
                var row = (new Written<TKey>(k, entry.Key.Value, entry.Key.At), Written(s, value));
                var before = rows.FindIndex(r => same(r.Key.Value, k));
                if (before >= 0)
                {
                    rows[before] = row;
                }
                else
                {
                    rows.Add(row);
                }
            }
        }

        return [.. rows];
    }

    private ScalarNode? Scalar(string key, string wanted)
    {
        Ask(key);
        return Entry(key) is { } entry ? ScalarOf(entry, wanted) : null;
    }

    private ScalarNode? ScalarOf(MapEntry entry, string wanted)
    {
        if (entry.Value.Meant is ScalarNode { IsNull: false } s)
        {
            return s;
        }

        WrongForm(entry, wanted, $"write {entry.Key.Value}: and the value behind it");
        return null;
    }

    private IEnumerable<ScalarNode> Scalars(string key)
    {
        Ask(key);
        if (Entry(key) is not { } entry)
        {
            yield break;
        }

        if (entry.Value.Meant is not ListNode list)
        {
            if (ScalarOf(entry, "a text, or a list of them") is { } s)
            {
                yield return s;
            }

            yield break;
        }

        if (list.Items.IsEmpty)
        {
            NoValue(entry);
        }

        foreach (var item in list.Items)
        {
            if (item.Meant is ScalarNode { IsNull: false } s)
            {
                yield return s;
            }
            else
            {
                Report(new(
                    "spec/type",
                    Severity.Error,
                    $"{key} is a list of texts; this entry is {(item.Meant is ScalarNode ? "empty" : FormOf(item.Meant))}",
                    Place(item, entry.Key)));
            }
        }
    }

    private bool ReadAmount<T>(ScalarNode s, string words, bool zero, out T value)
        where T : struct, IQuantity<T>
    {
        if (!Quantity.TryRead(words, out value, out var trouble))
        {
            Report(UnitMistakes.Finding<T>(s, words.Trim(), trouble));
            return false;
        }

        if (Limits.Trouble(value, words, zero) is { } limit)
        {
            Report(new("spec/value", Severity.Error, limit, s.At));
            return false;
        }

        return true;
    }

    private bool ReadSize(ScalarNode s, string words, out WireSize size)
    {
        if (WireSize.TryRead(words, out size, out var trouble))
        {
            return true;
        }

        Report(new(Quantity.NumberLength(words.Trim()) > 0 ? "spec/unit" : "spec/value", Severity.Error, trouble, s.At));
        return false;
    }

    private static Written<T> Written<T>(ScalarNode s, T value) => new(value, s.Value, s.At);
}
