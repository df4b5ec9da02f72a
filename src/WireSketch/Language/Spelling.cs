using System.Collections.Immutable;
using WireSketch.Syntax;

namespace WireSketch.Language;

/// <summary>Words that US and UK spell differently: either way they are the same word. Messages and the schema's own text are US.</summary>
internal static class Spelling
{
    /// <summary>Keys of the language.</summary>
    internal static ImmutableArray<(string Us, string Uk)> Keys { get; } =
    [
        ("color", "colour"), ("color-at-vehicle", "colour-at-vehicle"), ("labor", "labour"), ("labor-rate", "labour-rate"),
        ("behavior", "behaviour"), ("aluminum", "aluminium"),
    ];

    /// <summary>Words that stand as values.</summary>
    internal static ImmutableArray<(string Us, string Uk)> Values { get; } = [("gray", "grey"), ("aluminum", "aluminium")];

    /// <summary>A key in its US spelling.</summary>
    internal static string Key(string written) => Us(Keys, written);

    /// <summary>A value in its US spelling.</summary>
    internal static string Value(string written) => Us(Values, written);

    /// <summary>The UK spelling of a US key; null where both spell it alike.</summary>
    internal static string? UkOf(string key) => Keys.FirstOrDefault(k => k.Us == key).Uk;

    /// <summary>The entry of a key in either spelling.</summary>
    internal static MapEntry? Find(MapNode map, string key) =>
        map.Find(key) ?? (UkOf(key) is { } uk ? map.Find(uk) : null);

    private static string Us(ImmutableArray<(string Us, string Uk)> pairs, string written) =>
        pairs.FirstOrDefault(p => p.Uk == written).Us ?? written;
}
