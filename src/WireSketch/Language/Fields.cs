using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Tables;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>
/// The keys of one map of the spec, asked for by name. Each key is declared where it is asked for, with what it holds, so
/// that the reader, the JSON Schema and the reference page come from the same line: one implementation reads a spec, another
/// only writes down what was asked. Every method gives null (or an empty list) where the key is absent or was refused;
/// what is wrong with a value is a finding already.
/// </summary>
public abstract class Fields
{
    /// <summary>Where the map stands; the key's place where the map is empty.</summary>
    public abstract SourceSpan At { get; }

    /// <summary>The key under which the map stands: an id that the user chose, or a word of the language.</summary>
    public abstract Written<string> Key { get; }

    /// <summary>A single quantity such as <c>60 A</c>.</summary>
    /// <param name="key">The key.</param>
    /// <param name="holds">What it holds, one phrase, for the reference page.</param>
    /// <param name="otherwise">What is taken if it is absent, for the reference page; null if nothing is.</param>
    /// <param name="zero">Nothing at all makes sense here, such as a standby draw of 0 A. Less than nothing never does, but for
    /// temperatures and levels.</param>
    public abstract Written<T>? Amount<T>(string key, string holds, string? otherwise = null, bool zero = false)
        where T : struct, IQuantity<T>;

    /// <summary>A single quantity for which something is assumed if it is absent.</summary>
    public Written<T>? Amount<T>(string key, string holds, Assumption<T> otherwise, bool zero = false)
        where T : struct, IQuantity<T> => Amount<T>(key, holds, otherwise.ToString(), zero);

    /// <summary>A quantity, or the word <c>auto</c>: then the value is null inside the written value.</summary>
    public abstract Written<T?>? AmountOrAuto<T>(string key, string holds)
        where T : struct, IQuantity<T>;

    /// <summary>A range such as <c>0.1 V to 5 V</c>; a single value is a range of nothing.</summary>
    public abstract Written<Range<T>>? AmountRange<T>(string key, string holds, string? otherwise = null)
        where T : struct, IQuantity<T>;

    /// <summary>A multiple such as <c>2 x 4 ohm</c>, or a single value.</summary>
    public abstract Written<Multiple<T>>? AmountMultiple<T>(string key, string holds)
        where T : struct, IQuantity<T>;

    /// <summary>A size of wire.</summary>
    public abstract Written<WireSize>? Size(string key, string holds);

    /// <summary>A range of wire sizes such as <c>8 AWG to 1/0 AWG</c>, thinnest first.</summary>
    public abstract Written<Range<WireSize>>? SizeRange(string key, string holds);

    /// <summary>Free text.</summary>
    public abstract Written<string>? Text(string key, string holds, string? otherwise = null);

    /// <summary>One of a few choices, by its word; anything else is a finding with the nearest one.</summary>
    public Written<T>? Choice<T>(string key, string holds, ChoiceWords<T> words, string? otherwise = null)
        where T : struct, Enum => Word(key, holds, words.All, otherwise) is { } w ? words.Of(w) : null;

    /// <summary>A list of such choices; a single word is a list of one.</summary>
    public ImmutableArray<Written<T>> Choices<T>(string key, string holds, ChoiceWords<T> words)
        where T : struct, Enum => [.. Words(key, holds, words.All).Select(words.Of)];

    /// <summary>One of a few words; anything else is a finding with the nearest one.</summary>
    protected abstract Written<string>? Word(string key, string holds, ImmutableArray<string> words, string? otherwise = null);

    /// <summary>A list of such words; a single word is a list of one.</summary>
    protected abstract ImmutableArray<Written<string>> Words(string key, string holds, ImmutableArray<string> words);

    /// <summary>A list of texts; a single text is a list of one.</summary>
    public abstract ImmutableArray<Written<string>> Texts(string key, string holds);

    /// <summary><c>true</c> or <c>false</c>.</summary>
    public abstract Written<bool>? Flag(string key, string holds, string? otherwise = null);

    /// <summary>A whole number within limits.</summary>
    public abstract Written<int>? Count(string key, string holds, string? otherwise = null, int least = 1, int most = 1000);

    /// <summary>A plain number, such as a price; never less than nothing.</summary>
    public abstract Written<double>? Number(string key, string holds);

    /// <summary>A map with keys of the language.</summary>
    public abstract T? Map<T>(string key, string holds, Func<Fields, T> read)
        where T : class;

    /// <summary>A map whose keys are the user's own, in the order of the file.</summary>
    /// <param name="key">The key.</param>
    /// <param name="holds">What it holds.</param>
    /// <param name="read">Reads one of its maps; null where it could not be understood.</param>
    /// <param name="phrases">Whether the user's keys may have blanks in them.</param>
    public abstract ImmutableArray<T> Each<T>(string key, string holds, Func<Fields, T?> read, bool phrases = false)
        where T : class;

    /// <summary>A list of maps.</summary>
    public abstract ImmutableArray<T> List<T>(string key, string holds, Func<Fields, T> read)
        where T : class;

    /// <summary>A map from a user's own words to quantities, such as <c>{ 4 ohm: 250 W }</c>.</summary>
    public abstract ImmutableArray<(Written<TKey> Key, Written<TValue> Value)> Table<TKey, TValue>(string key, string holds)
        where TKey : struct, IQuantity<TKey>
        where TValue : struct, IQuantity<TValue>;

    /// <summary>A map from whole numbers to quantities, such as <c>{ 1: 15 A, 2: 30 A }</c>.</summary>
    public abstract ImmutableArray<(Written<int> Key, Written<TValue> Value)> Numbered<TValue>(string key, string holds)
        where TValue : struct, IQuantity<TValue>;

    /// <summary>A value that may be a map or a scalar: which one is there decides. The scalar's words come with their place.</summary>
    public abstract T? MapOrWords<T>(string key, string holds, Func<Fields, T> readMap, Func<Written<string>, T?> readWords)
        where T : class;

    /// <summary>Words with a grammar of their own, such as those of <c>wire</c>.</summary>
    public abstract T? Worded<T>(string key, string holds, Func<Written<string>, T?> read)
        where T : class;

    /// <summary>Reports those of these keys that are absent.</summary>
    public abstract void Require(params ReadOnlySpan<string> keys);

    /// <summary>Reports more than one of these keys, and none of them where one is needed.</summary>
    public abstract void Choose(bool needed, params ReadOnlySpan<string> keys);

    /// <summary>Reports that none of these keys is there; several may be.</summary>
    public abstract void RequireAny(params ReadOnlySpan<string> keys);

    /// <summary>Whether the key is present, without taking it.</summary>
    public abstract bool Has(string key);

    /// <summary>Whether the key is present, or another that probably means it.</summary>
    internal abstract bool MayHave(string key);

    /// <summary>Reads the map as a device, over the maps of its part; null if its kind is unknown, or where nothing is read.</summary>
    internal abstract Gear? ReadGear(GearReader reader);

    /// <summary>Reads the map as a part that no device may have named.</summary>
    internal abstract void ReadPart(GearReader reader);

    /// <summary>Reports a finding of the language, at a place.</summary>
    public abstract void Report(Finding finding);
}
