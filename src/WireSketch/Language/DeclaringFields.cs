using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>Reads nothing, but writes down every key that is asked for: the schema and the reference page are made from that.</summary>
internal sealed class DeclaringFields(SourceFile nowhere) : Fields
{
    private readonly OrderedDictionary<string, KeyEntry> entries = new(StringComparer.Ordinal);
    private readonly HashSet<string> required = new(StringComparer.Ordinal);
    private readonly List<ImmutableArray<string>> choices = [];

    public override SourceSpan At => nowhere.Start;

    public override Written<string> Key => new("", "", At);

    /// <summary>What was asked for, in order.</summary>
    internal ImmutableArray<KeyEntry> Entries => [
        .. entries.Values.Select(e =>
            e with { Required = required.Contains(e.Name), OneOf = choices.FirstOrDefault(c => c.Contains(e.Name), []) })
    ];

    public override Written<T>? Amount<T>(string key, string holds, string? otherwise = null, bool zero = false)
    {
        Add(Measured<T>(new(key, KeyForm.Amount, holds) { Otherwise = otherwise }));
        return null;
    }

    public override Written<T?>? AmountOrAuto<T>(string key, string holds)
    {
        Add(Measured<T>(new(key, KeyForm.AmountOrAuto, holds)));
        return null;
    }

    public override Written<Range<T>>? AmountRange<T>(string key, string holds, string? otherwise = null)
    {
        Add(Measured<T>(new(key, KeyForm.Range, holds) { Otherwise = otherwise }));
        return null;
    }

    public override Written<Multiple<T>>? AmountMultiple<T>(string key, string holds)
    {
        Add(Measured<T>(new(key, KeyForm.Multiple, holds)));
        return null;
    }

    public override Written<WireSize>? Size(string key, string holds)
    {
        Add(new(key, KeyForm.Size, holds) { Example = "4 AWG" });
        return null;
    }

    public override Written<Range<WireSize>>? SizeRange(string key, string holds)
    {
        Add(new(key, KeyForm.SizeRange, holds) { Example = "8 AWG to 1/0 AWG" });
        return null;
    }

    public override Written<string>? Text(string key, string holds, string? otherwise = null)
    {
        Add(new(key, KeyForm.Text, holds) { Otherwise = otherwise });
        return null;
    }

    protected override Written<string>? Word(string key, string holds, ImmutableArray<string> words, string? otherwise = null)
    {
        Add(new(key, KeyForm.Word, holds) { Otherwise = otherwise, Words = words, Example = words[0] });
        return null;
    }

    protected override ImmutableArray<Written<string>> Words(string key, string holds, ImmutableArray<string> words)
    {
        Add(new(key, KeyForm.WordList, holds) { Words = words, Example = words[0] });
        return [];
    }

    public override ImmutableArray<Written<string>> Texts(string key, string holds)
    {
        Add(new(key, KeyForm.TextList, holds));
        return [];
    }

    public override Written<bool>? Flag(string key, string holds, string? otherwise = null)
    {
        Add(new(key, KeyForm.Flag, holds) { Otherwise = otherwise, Example = "true" });
        return null;
    }

    public override Written<int>? Count(string key, string holds, string? otherwise = null, int least = 1, int most = 1000)
    {
        Add(new(key, KeyForm.Count, holds)
        {
            Otherwise = otherwise,
            Least = least,
            Most = most,
            Example = Math.Clamp(2, least, most).ToString(CultureInfo.InvariantCulture)
        });
        return null;
    }

    public override Written<double>? Number(string key, string holds)
    {
        Add(new(key, KeyForm.Number, holds) { Example = "12.50" });
        return null;
    }

    public override T? Map<T>(string key, string holds, Func<Fields, T> read)
        where T : class
    {
        Add(new(key, KeyForm.Map, holds) { Inside = Within(read) });
        return null;
    }

    public override ImmutableArray<T> Each<T>(string key, string holds, Func<Fields, T?> read, bool phrases = false)
        where T : class
    {
        Add(new(key, KeyForm.Named, holds) { Inside = Within(read) });
        return [];
    }

    public override ImmutableArray<T> List<T>(string key, string holds, Func<Fields, T> read)
    {
        Add(new(key, KeyForm.List, holds) { Inside = Within(read) });
        return [];
    }

    public override ImmutableArray<(Written<TKey> Key, Written<TValue> Value)> Table<TKey, TValue>(string key, string holds)
    {
        Add(
            Measured<TValue>(new(key, KeyForm.Table, holds) { KeyUnits = UnitsOf<TKey>() }) with
            {
                Example = $"{{ {Limits.Example<TKey>()}: {Limits.Example<TValue>()} }}"
            });
        return [];
    }

    public override ImmutableArray<(Written<int> Key, Written<TValue> Value)> Numbered<TValue>(string key, string holds)
    {
        Add(Measured<TValue>(new(key, KeyForm.Numbered, holds)) with { Example = $"{{ 1: {Limits.Example<TValue>()} }}" });
        return [];
    }

    public override T? MapOrWords<T>(string key, string holds, Func<Fields, T> readMap, Func<Written<string>, T?> readWords)
        where T : class
    {
        Add(new(key, KeyForm.MapOrText, holds) { Inside = Within(readMap) });
        return null;
    }

    public override T? Worded<T>(string key, string holds, Func<Written<string>, T?> read)
        where T : class
    {
        Add(new(key, KeyForm.Text, holds));
        return null;
    }

    public override void Require(params ReadOnlySpan<string> keys)
    {
        foreach (var key in keys)
        {
            required.Add(key);
        }
    }

    public override void RequireAny(params ReadOnlySpan<string> keys)
    {
    }

    public override void Choose(bool needed, params ReadOnlySpan<string> keys) => choices.Add([.. keys]);

    internal override Gear? ReadGear(GearReader reader) => null;

    internal override void ReadPart(GearReader reader)
    {
    }

    internal override bool MayHave(string key) => false;

    public override bool Has(string key) => false;

    public override void Report(Finding finding)
    {
    }

    private void Add(KeyEntry entry) => entries.TryAdd(entry.Name, entry);

    private ImmutableArray<KeyEntry> Within<T>(Func<Fields, T?> read)
        where T : class
    {
        var inner = new DeclaringFields(nowhere);
        read(inner);
        return inner.Entries;
    }

    private static KeyEntry Measured<T>(KeyEntry entry)
        where T : struct, IQuantity<T> => entry with
        {
            Units = UnitsOf<T>(),
            Example = entry.Form switch
            {
                KeyForm.Range => Limits.RangeExample<T>(),
                KeyForm.Multiple => $"2 x {Limits.Example<T>()}",
                _ => Limits.Example<T>(),
            },
        };

    private static ImmutableArray<string> UnitsOf<T>()
        where T : struct, IQuantity<T> => [.. T.Units.SelectMany(u => u.Also.Prepend(u.Symbol))];
}
