using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Documents.Formats;
using WireSketch.Installation;

namespace WireSketch.Documents.Lists;

/// <summary>Everything that must be bought, with where it goes.</summary>
/// <param name="Lines">By section, each in the order of the spec.</param>
/// <param name="Currency">The currency of all prices; null if the spec names none.</param>
public sealed record PartsList(ImmutableArray<PartLine> Lines, string? Currency)
{
    public static PartsList From(InstalledSystem install, CutList cuts) => new(
        [
            .. DeviceLines.Of(install), .. ProtectionLines.Of(install), .. WireLines(cuts), .. TerminalLines.Of(cuts),
            .. CoveringLines.Of(install, cuts),
            .. ProtectionLines.SparesOf(install), .. LaborLines.Of(install),
        ],
        install.Spec.Job.Currency?.Value);

    /// <summary>What the lines with a price cost together.</summary>
    public double KnownCost => Lines.Sum(l => l.Cost ?? 0);

    /// <summary>Hours of all lines that state their labor.</summary>
    public double KnownHours => Lines.Where(l => l.Group == PartGroup.Labor).Sum(l => l.Quantity);

    /// <summary>Whether a price is missing, so that the sum is not the whole.</summary>
    public bool LacksPrices => Lines.Any(l => l.Price is null && l.Group != PartGroup.Labor);

    private static IEnumerable<PartLine> WireLines(CutList cuts) => cuts.Totals.Select(t => t.Stocks is { } stocks
        ? new PartLine(
            PartGroup.Wire,
            t.Words,
            stocks,
            $"lengths of {t.Type!.StockLength}",
            t.Type.Price?.Value,
            t.Runs,
            $"{cuts.Lengths.Both(t.Total)} cut in all")
        : new PartLine(
            PartGroup.Wire,
            t.Words,
            cuts.Lengths.IsMetric ? Round(t.Total.Value) : Round(t.Total.Feet),
            cuts.Lengths.IsMetric ? "m" : "ft",
            null,
            t.Runs,
            ""));

    private static double Round(double length) => Math.Round(length, 2, MidpointRounding.AwayFromZero);

    /// <summary>The list for a spreadsheet.</summary>
    public PlainTable ForSpreadsheet() => new(
        [
            new("section"), new("item"), new("quantity", true), new("unit"), new("price", true), new("cost", true), new("currency"),
            new("used_at"), new("remarks"),
        ],
        [
            .. Lines.Select(l => ImmutableArray.Create(
                Section(l.Group), l.Item, PlainTable.Number(l.Quantity, 2), l.Unit, Money(l.Price), Money(l.Cost),
                l.Price is null ? "" : Currency ?? "",
                string.Join("; ", l.Used), l.Remarks)),
        ]);

    /// <summary>One section for people; the price is shown where any line has one.</summary>
    public PlainTable ForReading(PartGroup group)
    {
        var lines = Lines.Where(l => l.Group == group).ToImmutableArray();
        var priced = lines.Any(l => l.Price is not null);
        ImmutableArray<Column> columns = [new("Quantity", true), new("Item"), new("Used at"), new("Remarks")];
        return new(priced ? [.. columns, new("Price", true), new("Cost", true)] : columns, [.. lines.Select(l => Cells(l, priced))]);
    }

    private static ImmutableArray<string> Cells(PartLine line, bool priced)
    {
        ImmutableArray<string> cells = [Amount(line), line.Item, Places(line.Used), line.Remarks];
        return priced ? [.. cells, Money(line.Price), Money(line.Cost)] : cells;
    }

    internal static string Section(PartGroup group) => group switch
    {
        PartGroup.Devices => "devices",
        PartGroup.Protection => "fuses and holders",
        PartGroup.Wire => "wire",
        PartGroup.Terminals => "terminals",
        PartGroup.Covering => "grommets and loom",
        PartGroup.Consumables => "consumables",
        PartGroup.Spares => "spares",
        _ => "labor",
    };

    private static string Amount(PartLine line) =>
        line.Unit == PartLine.Pieces ? PlainTable.Number(line.Quantity, 2) : $"{PlainTable.Number(line.Quantity, 2)} {line.Unit}";

    private static string Money(double? amount) => amount?.ToString("F2", CultureInfo.InvariantCulture) ?? "";

    /// <summary>Places, of many the first ones.</summary>
    private static string Places(ImmutableArray<string> used)
    {
        const int shown = 12;
        return used.Length <= shown
            ? string.Join(", ", used)
            : string.Create(
                CultureInfo.InvariantCulture,
                $"{string.Join(", ", used.Take(shown))} and {used.Length - shown} more (all in parts.csv)");
    }
}
