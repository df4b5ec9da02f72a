using System.Collections.Immutable;
using System.Text.Json;
using System.Text.Json.Serialization;
using WireSketch.Documents.Findings;
using WireSketch.Documents.Formats;

namespace WireSketch.Documents.Reports;

/// <summary>The calculation report for people and for programs.</summary>
internal static class ReportPapers
{
    private const int Version = 1;

    private const string Nothing = "[]}";

    private static readonly ReportContext Context = new(new JsonSerializerOptions(FindingsJson.Options) { WriteIndented = false });

    public static Paper ForPeople(PaperHead head, CalculationReport report)
    {
        var paper = head.Begin("Calculation report").Heading(2, "Cautions").List(Cautions.ForTechnicians)
            .Heading(2, "How to read it")
            .Paragraph(
                "Every chapter says how it is computed and from which texts. Above each table stand its symbols, each with its formula "
                    + "or its origin; an origin that differs from row to row stands in the last column: file and line, another chapter, "
                    + "a table, or a default with what that rests on. Below each table its first row is worked out in base units (V, A, "
                    + "ohm, W, m, mm2, s, C).")
            .Paragraph(
                "Values are rounded for printing only; report.json has every digit. In formulas · is times, sum adds up all that the "
                    + "cell lists, ceil rounds up to a whole number.");
        foreach (var chapter in report.Chapters.Where(c => !c.Results.IsEmpty))
        {
            paper.Heading(2, chapter.Title);
            foreach (var words in chapter.Method)
            {
                paper.Paragraph(words);
            }

            paper.Table(new(
                [new("Constant"), new("Value"), new("What it is"), new("Origin")],
                [.. chapter.Constants.Select(c => ImmutableArray.Create(c.Symbol, c.Words, c.Name, c.Origin))]));
            foreach (var group in SameWorking.Groups(chapter))
            {
                Write(paper, chapter, group);
            }
        }

        return paper.ToPaper("report.md");
    }

    /// <summary>A calculation on a line: a change shows as a line in a comparison, and a large system stays readable.</summary>
    public static Paper ForPrograms(PaperHead head, CalculationReport report)
    {
        var document = JsonSerializer.Serialize(new ReportDocument(Version, head.SpecName, head.Fingerprint, []), Context.ReportDocument);
        return Paper.OfText("report.json", Filled(document, report.Chapters.Select(c =>
            Filled(
                JsonSerializer.Serialize(c with { Results = [] }, Context.Chapter),
                c.Results.Select(r => JsonSerializer.Serialize(r, Context.Calculation)))))
            + "\n");
    }

    /// <summary>Puts entries, a line each, into the empty list with which an object ends.</summary>
    private static string Filled(string empty, IEnumerable<string> entries)
    {
        var lines = string.Join(",\n", entries);
        return lines.Length == 0 ? empty : $"{empty[..^Nothing.Length]}[\n{lines}\n]}}";
    }

    /// <summary>Calculations that differ in nothing but their numbers and origins: symbols, table, first row worked out.</summary>
    private static void Write(Markdown paper, Chapter chapter, ImmutableArray<Calculation> group)
    {
        var first = group[0];
        var shared = first.Inputs.Select((input, i) => group.All(c => c.Inputs[i].Origin == input.Origin)).ToArray();
        paper.List(
        [
            .. first.Inputs.Select((input, i) => $"{Head(input.Symbol, input.Name)}{(shared[i] ? $" — {input.Origin}" : "")}"),
            .. first.Values.Select(v => v.Formula is { } f ? $"{v.Symbol} = {f}: {v.Name}" : $"{Head(v.Symbol, v.Name)} — {v.By}"),
        ]);
        var origins = shared.Contains(false);
        paper.Table(new(
            [
                new("Of"),
                .. first.Inputs.Select(i => new Column(Short(i.Symbol, i.Name))),
                .. first.Values.Select(v => new Column(Short(v.Symbol, v.Name))),
                .. origins ? new[] { new Column("Origins") } : [],
            ],
            [.. group.Select(c => Row(c, shared, origins))]));
        var worked = first.Values.Where(v => v is { Formula: not null, Value: not null })
            .Select(v =>
                $"{v.Symbol} = {Formula.WithNumbers(v.Formula!, chapter, first)} = {Quantities.Quantity.Digits(v.Value!.Value, ReportBuilder.FineDigits)} {(v.Unit == "share" ? "" : v.Unit)}".TrimEnd())
            .ToArray();
        if (worked.Length > 0)
        {
            paper.Paragraph($"{first.Subject}: {string.Join("; ", worked)}.");
        }
    }

    private static ImmutableArray<string> Row(Calculation c, bool[] shared, bool origins)
    {
        var own = c.Inputs.Where((_, i) => !shared[i])
            .GroupBy(i => i.Origin)
            .Select(g => $"{string.Join(", ", g.Select(i => Short(i.Symbol, i.Name)))}: {g.Key}");
        return [
            c.Subject,
            .. c.Inputs.Select(i => i.Words.Length == 0 ? "none" : i.Words),
            .. c.Values.Select(v => v.Words),
            .. origins ? [string.Join("; ", own)] : Array.Empty<string>()
        ];
    }

    private static string Head(string symbol, string name) => symbol.Length == 0 ? name : $"{symbol}: {name}";

    private static string Short(string symbol, string name) => symbol.Length == 0 ? name : symbol;
}

/// <summary>Finds calculations that fit into one table.</summary>
internal static class SameWorking
{
    /// <summary>In the order in which the first of each kind comes.</summary>
    public static IEnumerable<ImmutableArray<Calculation>> Groups(Chapter chapter) => chapter.Results
        .GroupBy(Shape, StringComparer.Ordinal).Select(g => g.ToImmutableArray());

    /// <summary>The same results about several subjects as one; their order is that of the first of each.</summary>
    public static IEnumerable<Calculation> Merged(IEnumerable<Calculation> calculations) => calculations
        .GroupBy(
            c =>
                string.Join(
                    '\n',
                    c.Inputs.Select(i => $"{i.Symbol}|{i.Name}|{i.Words}|{i.Origin}")
                        .Concat(c.Values.Select(v => $"{v.Symbol}|{v.Words}|{v.Formula}"))),
            StringComparer.Ordinal)
        .Select(g => g.First() with { Subject = string.Join(", ", g.Select(c => c.Subject)) });

    private static string Shape(Calculation c) =>
        string.Join(
            '\n',
            c.Inputs.Select(i => $"{i.Symbol}|{i.Name}").Concat(c.Values.Select(v => $"{v.Symbol}|{v.Name}|{v.Formula}|{v.By}")));
}

internal sealed record ReportDocument(int Version, string Spec, string Fingerprint, ImmutableArray<Chapter> Chapters);

[JsonSerializable(typeof(ReportDocument))]
[JsonSerializable(typeof(Chapter))]
[JsonSerializable(typeof(Calculation))]
internal sealed partial class ReportContext : JsonSerializerContext;
