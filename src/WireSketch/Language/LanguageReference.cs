using System.Collections.Immutable;
using WireSketch.Text;

namespace WireSketch.Language;

/// <summary>What a key takes.</summary>
internal enum KeyForm
{
    Amount,

    /// <summary>A quantity, or the word auto.</summary>
    AmountOrAuto,

    /// <summary>A quantity, or two with "to" between them.</summary>
    Range,

    /// <summary>A quantity, or a number of it such as 2 x 4 ohm.</summary>
    Multiple,
    Size,
    SizeRange,
    Text,
    Word,

    /// <summary>A word or a list of them.</summary>
    WordList,

    /// <summary>A text or a list of them.</summary>
    TextList,
    Flag,
    Count,
    Number,
    Map,

    /// <summary>A map whose keys are the user's names.</summary>
    Named,

    /// <summary>A list of maps.</summary>
    List,

    /// <summary>A map from quantities to quantities.</summary>
    Table,

    /// <summary>A map from whole numbers to quantities.</summary>
    Numbered,

    /// <summary>A map, or a few words in its place.</summary>
    MapOrText,
}

/// <summary>A key of the language.</summary>
/// <param name="Name">The key.</param>
/// <param name="Form">What it takes.</param>
/// <param name="Holds">What it holds, one phrase.</param>
internal sealed record KeyEntry(string Name, KeyForm Form, string Holds)
{
    /// <summary>What is taken if it is left out; null if nothing is.</summary>
    public string? Otherwise { get; init; }

    /// <summary>The words it takes.</summary>
    public ImmutableArray<string> Words { get; init; } = [];

    /// <summary>All ways to write the units that fit.</summary>
    public ImmutableArray<string> Units { get; init; } = [];

    /// <summary>All ways to write the units that fit the keys of a table.</summary>
    public ImmutableArray<string> KeyUnits { get; init; } = [];

    /// <summary>A typical value.</summary>
    public string Example { get; init; } = "";

    /// <summary>The keys of the map or maps that it takes.</summary>
    public ImmutableArray<KeyEntry> Inside { get; init; } = [];

    /// <summary>It must be there.</summary>
    public bool Required { get; init; }

    /// <summary>The keys of which at most one may be there, this one among them.</summary>
    public ImmutableArray<string> OneOf { get; init; } = [];

    public int Least { get; init; }

    public int Most { get; init; }
}

/// <summary>A kind of gear with its own keys.</summary>
/// <param name="Word">The word that <c>is</c> takes.</param>
/// <param name="Says">What it is.</param>
/// <param name="Terminals">Its terminals, as they are with every key left out.</param>
/// <param name="Keys">Its own keys.</param>
internal sealed record KindEntry(string Word, string Says, ImmutableArray<string> Terminals, ImmutableArray<KeyEntry> Keys);

/// <summary>Everything that may be written in a spec, gathered from the very lines that read it.</summary>
/// <param name="Top">The top-level keys.</param>
/// <param name="Common">The keys that every device may have.</param>
/// <param name="Kinds">The kinds of gear.</param>
internal sealed record LanguageReference(ImmutableArray<KeyEntry> Top, ImmutableArray<KeyEntry> Common, ImmutableArray<KindEntry> Kinds)
{
    /// <summary>The whole language.</summary>
    public static LanguageReference Whole { get; } = Gather();

    /// <summary>The kinds whose gear has a key.</summary>
    public IEnumerable<KindEntry> KindsWith(string key) => Kinds.Where(k => k.Keys.Any(e => e.Name == key));

    private static LanguageReference Gather()
    {
        var nowhere = new SourceFile("language", "");
        var top = new DeclaringFields(nowhere);
        SpecKeys.Read(top, nowhere, _ => null, _ => null);
        var common = new DeclaringFields(nowhere);
        GearProperties.Read(common);
        return new(
            [
                .. top.Entries.OrderBy(e => SpecKeys.Order.IndexOf(e.Name))
                    .Select(e => e.Name == "wiresketch" ? e with { Required = true } : e)
            ],
            common.Entries,
            [.. GearKinds.All.Select(k => Describe(k, nowhere))]);
    }

    private static KindEntry Describe(GearKind kind, SourceFile nowhere)
    {
        var fields = new DeclaringFields(nowhere);
        var gear = kind.Read(fields);
        return new(kind.Word, kind.Says, [.. gear.Terminals.Select(t => t.Name)], fields.Entries);
    }
}
