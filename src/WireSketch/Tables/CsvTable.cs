using System.Collections.Immutable;
using System.Globalization;
using System.Text;

namespace WireSketch.Tables;

/// <summary>A table of the folder Data: a heading and rows, fields parted by commas, in double quotes where they hold one.</summary>
internal sealed class CsvTable
{
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
        using var reader = new StreamReader(stream);
        return Parse(reader.ReadToEnd());
    }

    public static CsvTable Parse(string text)
    {
        var lines = text.Split('\n', StringSplitOptions.RemoveEmptyEntries).Select(l => Split(l.TrimEnd('\r'))).ToArray();
        var heading = lines[0];
        return new(heading, [.. lines.Skip(1).Select(cells => new Row(heading, cells))]);
    }

    private static ImmutableArray<string> Split(string line)
    {
        var cells = ImmutableArray.CreateBuilder<string>();
        var cell = new StringBuilder();
        var quoted = false;
        foreach (var c in line)
        {
            if (c == '"')
            {
                quoted = !quoted;
            }
            else if (c == ',' && !quoted)
            {
                cells.Add(cell.ToString());
                cell.Clear();
            }
            else
            {
                cell.Append(c);
            }
        }

        cells.Add(cell.ToString());
        return cells.ToImmutable();
    }

    internal sealed class Row(ImmutableArray<string> heading, ImmutableArray<string> cells)
    {
        /// <summary>A cell as it is printed; trailing zeros count in some tables.</summary>
        public string this[string column] => cells[heading.IndexOf(column)];

        public double Number(string column) => double.Parse(this[column], CultureInfo.InvariantCulture);

        public double? NumberOrNone(string column) => this[column].Length == 0 ? null : Number(column);
    }
}
