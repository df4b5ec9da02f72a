using System.Collections.Immutable;
using WireSketch.Diagnostics;
using WireSketch.Quantities;
using WireSketch.Tables;

namespace WireSketch.Language;

/// <summary>What conductors are made of.</summary>
public enum ConductorMaterial
{
    Copper,

    /// <summary>Copper-clad aluminum.</summary>
    Clad,
}

/// <summary>What a run asks for under <c>wire</c>: a size with its properties, a type by id, a line pair, or <c>auto</c>.</summary>
public sealed record WireChoice
{
    public required Written<string> Words { get; init; }

    /// <summary>The compiler chooses the size.</summary>
    public bool Auto { get; init; }

    /// <summary>A shielded two-channel signal cable.</summary>
    public bool LinePair { get; init; }

    /// <summary>Id of a wire type, if that is what was written.</summary>
    public string? TypeId { get; init; }

    public WireSize? Size { get; init; }

    /// <summary>The size as it was written, such as <c>4 AWG</c>.</summary>
    public string? SizeWords { get; init; }

    /// <summary>Conductors in the cable; 1 unless written as <c>2 x 14 AWG</c>.</summary>
    public int Conductors { get; init; } = 1;

    public ConductorMaterial Material { get; init; }

    public Celsius? Insulation { get; init; }

    /// <summary>Main color and tracer as English words, main first; empty if none is written.</summary>
    public ImmutableArray<string> Colors { get; init; } = [];

    /// <summary>Colors of each core in the order of the terminals, where they differ; else empty.</summary>
    public ImmutableArray<ImmutableArray<string>> CoreColors { get; init; } = [];

    internal static WireChoice? FromWords(Written<string> words, Fields f) => WireTextReader.Read(words, f);
}

/// <summary>A reusable wire type.</summary>
public sealed record WireType
{
    public required Written<string> Name { get; init; }

    public string Id => Name.Value;

    public Written<WireSize>? Size { get; init; }

    public ConductorMaterial Material { get; init; }

    /// <summary>solid, stranded or fine: class 1, 2 or 5 and 6 of IEC 60228.</summary>
    public Written<Stranding>? Strands { get; init; }

    public Written<Celsius>? Insulation { get; init; }

    /// <summary>Colors of its cores as written, in the order of the terminals: of one core where all are alike.</summary>
    public ImmutableArray<ImmutableArray<string>> Cores { get; init; } = [];

    public ImmutableArray<string> Colors => Cores.IsEmpty ? [] : Cores[0];

    /// <summary>Colors of each core in the order of the terminals, where they differ; else empty.</summary>
    public ImmutableArray<ImmutableArray<string>> CoreColors => Cores.Length > 1 ? Cores : [];

    public Written<Meters>? StockLength { get; init; }

    public Written<double>? Price { get; init; }

    internal static WireType Read(Fields f)
    {
        f.Require("size");
        return ReadFacts(f);
    }

    private static WireType ReadFacts(Fields f) => new()
    {
        Name = f.Key,
        Size = f.Size("size", "its size"),
        Material = f.Choice("material", "what the conductor is made of", ConductorMaterials.Words, "copper")?.Value
            ?? ConductorMaterial.Copper,
        Strands = f.Choice("strands", "how fine it is stranded", Strandings.Words, "fine"),
        Insulation = ReadInsulation(f),
        Cores = f.Text("color", "its color; blue/white for a tracer; one for each core joined by +") is { } c
            ? WireTextReader.ReadCores(c, f)
            : [],
        StockLength = f.Amount<Meters>("stock", "length it is sold in"),
        Price = f.Number("price", "price of that length, in the job's currency"),
    };

    /// <summary>
    /// What is wrong with a temperature that insulation is said to be rated for: from 60 C (33 CFR 183.425 Table 5) to the 260 C of
    /// fluoropolymer (common practice).
    /// </summary>
    internal static string? InsulationTrouble(Celsius rated) =>
        rated.Value is >= 59.5 and <= 260.5 ? null : $"insulation is rated for 60 C to 260 C, not for {rated}";

    private static Written<Celsius>? ReadInsulation(Fields f)
    {
        var rated = f.Amount("insulation", "temperature that its insulation is rated for", Assume.Insulation);
        if (rated is { } written && InsulationTrouble(written.Value) is { } trouble)
        {
            f.Report(new(
                "spec/value", Diagnostics.Severity.Error, trouble, written.At)
            { Help = "write what is printed on it, such as 105 C" });
            return null;
        }

        return rated;
    }
}

/// <summary>A named color of a conductor.</summary>
/// <param name="Code">IEC 60757 letter code; for a color that the standard does not name, our own two letters.</param>
/// <param name="Name">English name.</param>
/// <param name="Red">Red of the color to draw it in, 0 to 255.</param>
/// <param name="Green">Green of it.</param>
/// <param name="Blue">Blue of it.</param>
public sealed record ConductorColor(string Code, string Name, byte Red, byte Green, byte Blue)
{
    /// <summary>
    /// Codes and names after IEC 60757; the tints are our own choice. "clear" is added for speaker cable (common practice).
    /// </summary>
    public static ImmutableArray<ConductorColor> All { get; } =
    [
        new("BK", "black", 0x22, 0x28, 0x2e), new("BN", "brown", 0x7a, 0x4a, 0x26), new("RD", "red", 0xc8, 0x2a, 0x1f),
        new("OG", "orange", 0xe8, 0x7a, 0x16), new("YE", "yellow", 0xf0, 0xc8, 0x1e), new("GN", "green", 0x2a, 0x8a, 0x45),
        new("BU", "blue", 0x24, 0x57, 0xa6), new("VT", "violet", 0x7a, 0x4a, 0xa0), new("GY", "gray", 0x8a, 0x94, 0x9d),
        new("WH", "white", 0xf7, 0xf7, 0xf4), new("PK", "pink", 0xe8, 0x8f, 0xa8), new("GD", "gold", 0xb8, 0x96, 0x3e),
        new("TQ", "turquoise", 0x2a, 0xa8, 0xa8), new("SR", "silver", 0xb9, 0xc0, 0xc6), new("CL", "clear", 0xd8, 0xb0, 0x7a),
    ];

    /// <summary>The color of an English name or a code in capitals; grey and purple are understood as well.</summary>
    public static ConductorColor? Of(string words) => words.ToLowerInvariant() switch
    {
        "grey" => Of("gray"),
        "purple" => Of("violet"),
        var name => All.FirstOrDefault(c => c.Name == name || c.Code == words),
    };
}

/// <summary>Reads what stands under <c>wire</c>.</summary>
internal static class WireTextReader
{
    /// <summary>
    /// Size first, then in any order color, <c>CCA</c> and insulation temperature; or a type's id; or <c>line pair</c>; or <c>auto</c>
    /// with a color.
    /// </summary>
    internal static WireChoice? Read(Written<string> words, Fields f)
    {
        var text = words.Value.Trim();
        if (TradeWords.Wire(text) is not null)
        {
            return Refuse(words, f, $"\"{text}\" is a line pair in a spec");
        }

        if (text == "line pair")
        {
            return new() { Words = words, LinePair = true, Conductors = 4 };
        }

        var parts = text.Replace("+", " + ", StringComparison.Ordinal).Split(' ', StringSplitOptions.RemoveEmptyEntries).ToList();
        if (parts.Count == 0)
        {
            return Refuse(words, f, "there is nothing under wire");
        }

        var choice = new WireChoice { Words = words };
        if (parts[0] == "auto")
        {
            choice = choice with { Auto = true };
            parts.RemoveAt(0);
        }
        else
        {
            if (parts.Count > 2
                && parts[1] is "x" or "×"
                && int.TryParse(
                    parts[0],
                    System.Globalization.NumberStyles.None,
                    System.Globalization.CultureInfo.InvariantCulture,
                    out var n)
                && n is > 0 and <= 100)
            {
                choice = choice with { Conductors = n };
                parts.RemoveRange(0, 2);
            }

            var taken = 0;
            var trouble = "";
            for (var k = Math.Min(2, parts.Count); k >= 1 && taken == 0; k--)
            {
                var candidate = string.Join(' ', parts.Take(k));
                if (WireSize.TryRead(candidate, out var size, out var why))
                {
                    choice = choice with { Size = size, SizeWords = candidate };
                    taken = k;
                }

                trouble = trouble.Length == 0 || !parts[Math.Min(1, parts.Count - 1)].StartsWith("ga", StringComparison.Ordinal)
                    ? why
                    : trouble;
            }

            if (taken == 0)
            {
                return char.IsAsciiDigit(text[0]) || !IsId(text) ? Refuse(words, f, trouble) : choice with { TypeId = text };
            }

            parts.RemoveRange(0, taken);
        }

        for (var i = 0; i < parts.Count; i++)
        {
            var part = parts[i];
            var temperature = i + 1 < parts.Count && parts[i + 1] is "C" or "F" or "°C" or "°F" ? part + " " + parts[i + 1] : part;
            if (part == "CCA")
            {
                choice = choice with { Material = ConductorMaterial.Clad };
            }
            else if (char.IsAsciiDigit(part[0]) && Quantity.TryRead<Celsius>(temperature, out var celsius, out _))
            {
                if (WireType.InsulationTrouble(celsius) is { } odd)
                {
                    return Refuse(words, f, odd);
                }

                choice = choice with { Insulation = celsius };
                i += temperature == part ? 0 : 1;
            }
            else if (ReadColors(new(part, part, words.At), f, quietly: true) is { Length: > 0 } colors)
            {
                var cores = ImmutableArray.Create(colors);
                while (i + 1 < parts.Count && parts[i + 1] == "+")
                {
                    if (i + 2 >= parts.Count || ReadColors(new(parts[i + 2], parts[i + 2], words.At), f, quietly: true) is not [_, ..] next)
                    {
                        return Refuse(words, f, "behind + stands the color of the next core, as in white/blue + white/black");
                    }

                    cores = cores.Add(next);
                    i += 2;
                }

                choice = choice with { Colors = colors, CoreColors = cores.Length > 1 ? cores : [] };
            }
            else
            {
                return Refuse(words, f, $"\"{part}\" is neither a color, nor CCA, nor an insulation temperature");
            }
        }

        return choice;
    }

    /// <summary>The colors of a cable's cores, joined by plus; of one core for a single wire.</summary>
    internal static ImmutableArray<ImmutableArray<string>> ReadCores(Written<string> words, Fields f)
    {
        var cores = words.Value.Split('+').Select(c => ReadColors(words with { Value = c.Trim() }, f)).ToImmutableArray();
        return cores.Any(c => c.IsEmpty) ? [] : cores;
    }

    /// <summary>A color, or two joined by a stroke for a tracer.</summary>
    internal static ImmutableArray<string> ReadColors(Written<string> words, Fields f, bool quietly = false)
    {
        var names = words.Value.Split('/').Select(p => ConductorColor.Of(p.Trim())?.Name).ToArray();
        if (names.Length <= 2 && names.All(n => n is not null))
        {
            return [.. names!];
        }

        if (!quietly)
        {
            f.Report(new("spec/value", Severity.Error, $"\"{words.Value}\" is no color of wire", words.At)
            {
                Help = $"use {string.Join(", ", ConductorColor.All.Select(c => c.Name))}, or their codes; blue/white for a tracer",
            });
        }

        return [];
    }

    private static bool IsId(string text) => text.All(c => char.IsLetterOrDigit(c) || c is '-' or '_');

    private static WireChoice? Refuse(Written<string> words, Fields f, string trouble)
    {
        f.Report(new("spec/value", Severity.Error, trouble, words.At)
        {
            Help = WireCures.Of(words.Value) is { } meant && WireCures.BeginsWithSize(meant) ? $"write {meant}" : "write the size first, then color, CCA or insulation temperature: 4 AWG red 105 C; or a wire type's id; line pair; auto",
        });
        return null;
    }
}

/// <summary>How fine a conductor is stranded.</summary>
public enum Stranding
{
    Solid,
    Stranded,
    Fine,
}

/// <summary>The words of <see cref="Stranding"/>.</summary>
public static class Strandings
{
    public static ChoiceWords<Stranding> Words { get; } = new(
        (Stranding.Solid, "solid"),
        (Stranding.Stranded, "stranded"),
        (Stranding.Fine, "fine"));
}

/// <summary>The words of <see cref="ConductorMaterial"/>.</summary>
public static class ConductorMaterials
{
    public static ChoiceWords<ConductorMaterial> Words { get; } = new(
        (ConductorMaterial.Copper, "copper"),
        (ConductorMaterial.Clad, "CCA"));
}
