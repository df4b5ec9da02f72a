using CsvHelper;

namespace WireSketch.Documents.Formats;

/// <summary>
/// Writes a table as CSV after RFC 4180: CR LF, one header line, quotes where needed. It begins with a byte order mark, since
/// spreadsheets take it for another encoding otherwise. Words that a spreadsheet would run as a formula get an apostrophe.
/// </summary>
internal static class CsvPaper
{
    private static readonly CsvWriterOptions Format = CsvWriterOptions.Default with
    {
        NewLine = "\r\n",
        WriteByteOrderMark = true,
        Injection = CsvInjection.Escape,
    };

    public static Paper Write(string name, PlainTable table)
    {
        using var bytes = new MemoryStream();
        using (var csv = CsvWriter.Create(bytes, Format, leaveOpen: true))
        {
            csv.WriteRecord([.. table.Columns.Select(c => c.Heading)]);
            foreach (var row in table.Rows)
            {
                csv.WriteRecord([.. row.Select(OnOneLine)]);
            }
        }

        return new(name, bytes.ToArray());
    }

    /// <summary>A formula hides behind a line break or a space as well, where the writer does not look for it.</summary>
    private static string OnOneLine(string cell) =>
        string.Join(
            ' ',
            cell.Split(
                ['\r', '\n', '\t', '\v', '\f', '\u0085', '\u2028', '\u2029'],
                StringSplitOptions.RemoveEmptyEntries | StringSplitOptions.TrimEntries))
            .Trim();
}
