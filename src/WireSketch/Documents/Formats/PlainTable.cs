using System.Collections.Immutable;
using System.Globalization;

namespace WireSketch.Documents.Formats;

/// <summary>A table of words and numbers, ready to be written in any format.</summary>
/// <param name="Columns">Its columns.</param>
/// <param name="Rows">A cell for every column; numbers with a point and no grouping.</param>
public sealed record PlainTable(ImmutableArray<Column> Columns, ImmutableArray<ImmutableArray<string>> Rows)
{
    /// <summary>A number as tables have it: a point, no grouping, no more decimals than asked for, none that are zero.</summary>
    public static string Number(double value, int decimals = 6)
    {
        var text = Math.Round(value, decimals, MidpointRounding.AwayFromZero)
            .ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return text.Contains('.', StringComparison.Ordinal) ? text.TrimEnd('0').TrimEnd('.') : text;
    }
}

/// <summary>A column of a table.</summary>
/// <param name="Heading">Its heading; in a CSV file the name by which programs find it.</param>
/// <param name="IsNumber">Its cells are numbers.</param>
public sealed record Column(string Heading, bool IsNumber = false);
