using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using CsvHelper;

namespace WireSketch.Tables;

/// <summary>A table of the folder Data: a heading and rows, as RFC 4180 has them.</summary>
internal sealed class CsvTable
{
    /// <summary>The heading is read as a record like the others.</summary>
    private static readonly CsvReaderOptions Format = CsvReaderOptions.Default with { HasHeader = false, SkipEmptyLines = true };

    private readonly ImmutableArray<string> heading;

    private CsvTable(ImmutableArray<string> heading, ImmutableArray<Row> rows)
    {
        this.heading = heading;
        Rows = rows;
    }

    public ImmutableArray<string> Columns => heading;

    public ImmutableArray<Row> Rows { get; }

    /// <summary>Reads one of the tables that are part of the library.</summary>
    public static CsvTable Own(string name)
    {
        using var stream = typeof(CsvTable).Assembly.GetManifestResourceStream($"WireSketch.Tables.Data.{name}.csv")
            ?? throw new InvalidOperationException($"The library was built without its table {name}.");
        using var reader = CsvReader.Create(stream, Format, leaveOpen: true);
        return Read(reader);
    }

    public static CsvTable Parse(string text)
    {
        using var reader = CsvReader.Create(Encoding.UTF8.GetBytes(text), Format);
        return Read(reader);
    }

    private static CsvTable Read(CsvReader reader)
    {
        var records = ImmutableArray.CreateBuilder<ImmutableArray<string>>();
        while (reader.Read())
        {
            records.Add([.. Enumerable.Range(0, reader.FieldCount).Select(i => reader.GetString(i))]);
        }

        var heading = records[0];
        return new(heading, [.. records.Skip(1).Select(cells => new Row(heading, cells))]);
    }

    internal sealed class Row(ImmutableArray<string> heading, ImmutableArray<string> cells)
    {
        /// <summary>A cell as it is printed; trailing zeros count in some tables.</summary>
        public string this[string column] => cells[heading.IndexOf(column)];

        public double Number(string column) => double.Parse(this[column], CultureInfo.InvariantCulture);

        public double? NumberOrNone(string column) => this[column].Length == 0 ? null : Number(column);
    }
}
