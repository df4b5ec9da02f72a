using System.Collections.Immutable;
using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using System.Text.Json.Nodes;
using System.Text.RegularExpressions;
using WireSketch.Quantities;

namespace WireSketch.Language;

/// <summary>The language as a JSON Schema (draft-07), by which editors complete and check a spec while it is typed.</summary>
public static class SpecSchema
{
    /// <summary>The schema as JSON text; the same every time.</summary>
    public static string Write()
    {
        var language = LanguageReference.Whole;
        var top = new JsonObject();
        foreach (var entry in language.Top)
        {
            top[entry.Name] = entry.Name switch
            {
                "wiresketch" => new JsonObject { ["const"] = SpecVersion.Known, ["description"] = entry.Holds },
                "gear" => Named(entry, Reference("gear")),
                "parts" => Named(entry, Reference("part")),
                _ => Value(entry),
            };
        }

        var definitions = new JsonObject
        {
            ["gear"] = new JsonObject
            {
                ["allOf"] = new JsonArray(Reference("part"), new JsonObject { ["anyOf"] = new JsonArray(Needs(["is"]), Needs(["part"])) })
            },
            ["part"] = Part(language),
            ["any gear"] = Map(language.Common),
        };
        foreach (var kind in language.Kinds)
        {
            definitions[kind.Word] = Kind(language, kind);
        }

        var schema = new JsonObject
        {
            ["$schema"] = "http://json-schema.org/draft-07/schema#",
            ["title"] = "WireSketch spec, version 1",
            ["description"] = "What is in a vehicle's audio and electrical system, and how it is wired.",
            ["type"] = "object",
            ["required"] = Strings(["wiresketch"]),
            ["additionalProperties"] = false,
            ["properties"] = top,
            ["definitions"] = definitions,
        };
        using var memory = new MemoryStream();
        using (var writer = new Utf8JsonWriter(
            memory,
            new() { Indented = true, NewLine = "\n", Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping }))
        {
            schema.WriteTo(writer);
        }

        return Encoding.UTF8.GetString(memory.ToArray()) + "\n";
    }

    /// <summary>Gear of any kind: its kind decides which keys it may have. Without one, its part knows.</summary>
    private static JsonObject Part(LanguageReference language)
    {
        var cases = new JsonArray();
        foreach (var kind in language.Kinds)
        {
            cases.Add((JsonNode)new JsonObject
            {
                ["if"] = new JsonObject
                {
                    ["properties"] = new JsonObject { ["is"] = new JsonObject { ["const"] = kind.Word } },
                    ["required"] = new JsonArray("is")
                },
                ["then"] = Reference(kind.Word),
            });
        }

        return new()
        {
            ["type"] = "object",
            ["properties"] = new JsonObject
            {
                ["is"] = new JsonObject { ["description"] = "the kind of gear", ["enum"] = Strings(language.Kinds.Select(k => k.Word)) }
            },
            ["allOf"] = cases,
        };
    }

    private static JsonObject Kind(LanguageReference language, KindEntry kind)
    {
        var map = Map(kind.Keys, required: false);
        var properties = (JsonObject)map["properties"]!;
        properties.Insert(0, "is", new JsonObject { ["const"] = kind.Word, ["description"] = kind.Says });
        foreach (var entry in language.Common)
        {
            properties[entry.Name] = Reference("any gear/properties/" + entry.Name);
        }

        return map;
    }

    /// <summary>A map with keys of the language. What a part may bring along is not required.</summary>
    private static JsonObject Map(ImmutableArray<KeyEntry> keys, bool required = true)
    {
        var properties = new JsonObject();
        foreach (var key in keys)
        {
            properties[key.Name] = Value(key);
            if (Spelling.UkOf(key.Name) is { } uk)
            {
                properties[uk] = Value(key);
            }
        }

        var map = new JsonObject { ["type"] = "object", ["additionalProperties"] = false, ["properties"] = properties };
        var needed = keys.Where(k => k.Required && required).Select(k => k.Name).ToArray();
        if (needed.Length > 0)
        {
            map["required"] = Strings(needed);
        }

        var pairs = keys.Where(k => k.OneOf.Length > 0)
            .SelectMany(k => k.OneOf.SkipWhile(o => o != k.Name).Skip(1).Select(o => Needs([k.Name, o])))
            .ToArray();
        if (pairs.Length > 0)
        {
            map["not"] = new JsonObject { ["anyOf"] = new JsonArray([.. pairs]) };
        }

        return map;
    }

    private static JsonObject Value(KeyEntry key)
    {
        var value = key.Form switch
        {
            KeyForm.Amount => Pattern(Amount(key.Units), $"write a number and its unit, such as {key.Example}"),
            KeyForm.AmountOrAuto => Pattern($"auto|{Amount(key.Units)}", $"write a number and its unit, such as {key.Example}, or auto"),
            KeyForm.Range =>
                Pattern(
                    $"({Number} to )?{Amount(key.Units)}|{Amount(key.Units)} to {Amount(key.Units)}",
                    $"write a range, such as {key.Example}"),
            KeyForm.Multiple => Pattern($"([0-9]+ *[x×] *)?{Amount(key.Units)}", $"write a quantity or a multiple, such as {key.Example}"),
            KeyForm.Size => Pattern(Size, $"write a size, such as {key.Example} or 21 mm2"),
            KeyForm.SizeRange => Pattern($"({Size}|[0-9/]+) to {Size}|{Size}", $"write a range of sizes, such as {key.Example}"),
            KeyForm.Word => new JsonObject { ["enum"] = Strings(key.Words) },
            KeyForm.WordList => OneOrMore(new JsonObject { ["enum"] = Strings(key.Words) }),
            KeyForm.TextList => OneOrMore(Text()),
            KeyForm.Flag => new JsonObject { ["type"] = "boolean" },
            KeyForm.Count => new JsonObject { ["type"] = "integer", ["minimum"] = key.Least, ["maximum"] = key.Most },
            KeyForm.Number => new JsonObject { ["type"] = "number", ["minimum"] = 0 },
            KeyForm.Map => Map(key.Inside),
            KeyForm.Named => Named(key, Map(key.Inside)),
            KeyForm.List => new JsonObject { ["type"] = "array", ["items"] = Map(key.Inside) },
            KeyForm.Table => Table(Amount(key.KeyUnits), key),
            KeyForm.Numbered => Table("[0-9]+", key),
            KeyForm.MapOrText => new JsonObject { ["anyOf"] = new JsonArray(Text(), Map(key.Inside)) },
            _ => Text(),
        };
        value["description"] = key.Otherwise is null ? key.Holds : $"{key.Holds}; if left out: {key.Otherwise}";
        if (key.Example.Length > 0
            && key.Form is KeyForm.Amount or KeyForm.AmountOrAuto or KeyForm.Range or KeyForm.Multiple or KeyForm.Size or KeyForm.SizeRange)
        {
            value["examples"] = new JsonArray(key.Example);
        }

        return value;
    }

    private static JsonObject Reference(string definition) => new()
    {
        ["$ref"] = "#/definitions/" + definition.Replace(" ", "%20", StringComparison.Ordinal)
    };

    private const string Number = @"[-+]?([0-9]+\.?[0-9]*|\.[0-9]+)";

    private const string Size = @"([1-4]/0|[0-9]+) *[Aa][Ww][Gg]|([0-9]+\.?[0-9]*|\.[0-9]+) *(mm2|mm²|mm\^2)";

    private static string Amount(ImmutableArray<string> units) =>
        units.Contains("ft") ? $"({Simple(units)}|{TapeWords.Pattern})" : Simple(units);

    private static string Simple(ImmutableArray<string> units) => $"{Number} *({string.Join('|', units.Select(Regex.Escape))})";

    private static JsonObject Pattern(
        string pattern, string otherwise) => new()
        {
            ["type"] = "string",
            ["pattern"] = $"^ *({pattern}) *$",
            ["patternErrorMessage"] = otherwise
        };

    private static JsonObject Table(string keys, KeyEntry key) => new()
    {
        ["type"] = "object",
        ["additionalProperties"] = false,
        ["patternProperties"] = new JsonObject { [$"^ *({keys}) *$"] = Pattern(Amount(key.Units), $"write rows such as {key.Example}") },
    };

    private static JsonObject Named(KeyEntry key, JsonObject inside) => new()
    {
        ["description"] = key.Holds,
        ["type"] = "object",
        ["propertyNames"] = new JsonObject { ["pattern"] = "^[^.]+$" },
        ["additionalProperties"] = inside,
    };

    /// <summary>Any scalar: a date or a number is text as well.</summary>
    private static JsonObject Text() => new() { ["type"] = new JsonArray("string", "number", "boolean") };

    private static JsonObject OneOrMore(JsonObject one) => new()
    {
        ["anyOf"] = new JsonArray(one, new JsonObject { ["type"] = "array", ["minItems"] = 1, ["items"] = one.DeepClone() }),
    };

    private static JsonObject Needs(IEnumerable<string> keys) => new() { ["required"] = Strings(keys) };

    private static JsonArray Strings(IEnumerable<string> words) => [.. words.Select(w => (JsonNode?)JsonValue.Create(w))];
}
