using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>
/// Allowable current by size and insulation: 33 CFR 183.425, Table 5, with the engine-space factors of its note 1. The
/// regulation is for boats; it stands here because it is public and made for 12 V wiring. It states no ambient temperature;
/// those who reprint it say 30 C.
/// </summary>
public static class AmpacityTable
{
    /// <summary>Where the values come from.</summary>
    public const string Source = "33 CFR 183.425, Table 5";

    /// <summary>The ambient that the table is taken to hold for.</summary>
    public static readonly Celsius Ambient = new(30);

    private static readonly ImmutableArray<double> Columns = [60, 75, 80, 90, 105, 125, 200];

    private static readonly ImmutableArray<double> EngineSpace = [0.58, 0.75, 0.78, 0.82, 0.85, 0.89, 1.00];

    private static readonly ImmutableArray<(WireSize Size, ImmutableArray<double> Amps)> Rows = Read();

    /// <summary>The sizes of the table, thinnest first.</summary>
    public static ImmutableArray<WireSize> Sizes { get; } = [.. Rows.Select(r => r.Size)];

    /// <summary>
    /// What the table allows; null for conductors thinner than its thinnest or with insulation below 60 C. A size between two
    /// rows counts as the thinner row, an insulation between two columns as the cooler column.
    /// </summary>
    public static Amps? Of(WireSize size, Celsius insulation)
    {
        var column = ColumnOf(insulation);
        var row = Rows.LastOrDefault(r => r.Size.Area.Value <= size.Area.Value * 1.0001);
        return column < 0 || row.Amps.IsDefault ? null : new Amps(row.Amps[column]);
    }

    /// <summary>The factor for engine spaces, note 1.</summary>
    public static Share EngineSpaceFactor(Celsius insulation) => new(EngineSpace[Math.Max(0, ColumnOf(insulation))]);

    private static int ColumnOf(Celsius insulation) => Columns.Count(c => c <= insulation.Value) - 1;

    private static ImmutableArray<(WireSize, ImmutableArray<double>)> Read() =>
        [.. TableData.Rows("ampacity-33cfr183.csv").Select(cells =>
        {
            WireSize.TryRead(cells[0] + " AWG", out var size, out _);
            return (size, cells.Skip(1).Select(c => double.Parse(c, CultureInfo.InvariantCulture)).ToImmutableArray());
        })];
}
