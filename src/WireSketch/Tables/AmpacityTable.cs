using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Quantities;

namespace WireSketch.Tables;

/// <summary>
/// Allowable current by size and insulation: 33 CFR 183.425, Table 5, with its notes 1 (engine spaces) and 2 (bundles). The
/// regulation is for boats; it stands here because it is public and made for 12 V wiring. It states no ambient temperature;
/// those who reprint it say 30 C.
/// </summary>
public static class AmpacityTable
{
    /// <summary>Where the values come from.</summary>
    public const string Source = "33 CFR 183.425, Table 5";

    /// <summary>The ambient that the table is taken to hold for.</summary>
    public static readonly Celsius Ambient = new(30);

    private static readonly CsvTable Table = CsvTable.Own("ampacity-33cfr183");

    private static readonly CsvTable Factors = CsvTable.Own("ampacity-33cfr183-factors");

    private static readonly ImmutableArray<int> Columns = [
        .. Table.Columns.Skip(1).Select(c => int.Parse(c[2..^1], CultureInfo.InvariantCulture))
    ];

    private static readonly ImmutableArray<(WireSize Size, ImmutableArray<double> Amps)> Rows =
        [.. Table.Rows.Select(r => (SizeOf(r["awg"]), Table.Columns.Skip(1).Select(r.Number).ToImmutableArray()))];

    private static readonly ImmutableArray<double> EngineSpace =
        [
            .. Columns.Select(t =>
                Factors.Rows.Single(r => r["kind"] == "engine_space" && r["key"] == t.ToString(CultureInfo.InvariantCulture))
                    .Number("factor"))
        ];

    private static readonly ImmutableArray<(int Least, double Factor)> Bundles =
        [
            .. Factors.Rows.Where(r => r["kind"] == "bundling")
                .Select(r => (int.Parse(r["key"].Split('-', '+')[0], CultureInfo.InvariantCulture), r.Number("factor")))
        ];

    /// <summary>The sizes of the table, thinnest first.</summary>
    public static ImmutableArray<WireSize> Sizes { get; } = [.. Rows.Select(r => r.Size)];

    /// <summary>The insulation ratings of the table, coolest first.</summary>
    public static ImmutableArray<Celsius> Ratings { get; } = [.. Columns.Select(t => new Celsius(t))];

    /// <summary>
    /// What the table allows a copper conductor, uncorrected; null for conductors thinner than its thinnest or with insulation below 60
    /// C. A
    /// size between two rows lies between their currents, in proportion on logarithmic scales; one above the last counts as the last; an
    /// insulation between two columns counts as the cooler column.
    /// </summary>
    public static Amps? Of(WireSize size, Celsius insulation)
    {
        var column = ColumnOf(insulation);
        var below = Rows.LastOrDefault(r => r.Size.Area.Value <= size.Area.Value * 1.000001);
        if (column < 0 || below.Amps.IsDefault)
        {
            return null;
        }

        var above = Rows.FirstOrDefault(r => r.Size.Area.Value > size.Area.Value * 1.000001);
        if (above.Amps.IsDefault || Has(size))
        {
            return new(below.Amps[column]);
        }

        var share = Exact.Log(size.Area / below.Size.Area) / Exact.Log(above.Size.Area / below.Size.Area);
        return new(below.Amps[column] * Exact.Pow(above.Amps[column] / below.Amps[column], share));
    }

    /// <summary>
    /// The row below a size and the row above it, with their currents; null where the size is a row itself, or lies outside.
    /// </summary>
    internal static (WireSize Below, Amps BelowAmps, WireSize Above, Amps AboveAmps)? Around(WireSize size, Celsius insulation)
    {
        var column = ColumnOf(insulation);
        var below = Rows.LastOrDefault(r => r.Size < size);
        var above = Rows.FirstOrDefault(r => r.Size > size);
        return column < 0 || Has(size) || below.Amps.IsDefault || above.Amps.IsDefault
            ? null
            : (below.Size, new(below.Amps[column]), above.Size, new(above.Amps[column]));
    }

    /// <summary>The column that holds for an insulation; null below the coolest.</summary>
    internal static Celsius? ColumnFor(Celsius insulation) =>
        ColumnOf(insulation) is >= 0 and var column ? new Celsius(Columns[column]) : null;

    /// <summary>Whether a size is a row of the table.</summary>
    public static bool Has(WireSize size) => Rows.Any(r => Math.Abs((r.Size.Area / size.Area) - 1) < 1e-6);

    /// <summary>The factor for engine spaces, note 1.</summary>
    public static Share EngineSpaceFactor(Celsius insulation) => new(EngineSpace[Math.Max(0, ColumnOf(insulation))]);

    /// <summary>The factor for so many current-carrying conductors in a bundle, note 2; law from 50 V up, good practice below.</summary>
    public static Share BundleFactor(int conductors) =>
        new(Bundles.Where(b => b.Least <= conductors).Select(b => b.Factor).DefaultIfEmpty(1).Last());

    private static int ColumnOf(Celsius insulation) => Columns.Count(c => c <= insulation.Value) - 1;

    private static WireSize SizeOf(string awg) =>
        WireSize.TryRead(awg + " AWG", out var size, out var trouble) ? size : throw new InvalidOperationException(trouble);
}
