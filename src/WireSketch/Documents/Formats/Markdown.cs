using System.Text;

namespace WireSketch.Documents.Formats;

/// <summary>Writes CommonMark with tables. Whatever comes from a spec is plain text: marks in it are escaped.</summary>
internal sealed class Markdown
{
    private const string Marks = "\\`*_[]#<>|~&";

    private readonly StringBuilder text = new();

    public Markdown Heading(int level, string words)
    {
        Gap();
        text.Append('#', level).Append(' ').Append(Escape(words)).Append('\n');
        return this;
    }

    public Markdown Paragraph(string words)
    {
        Gap();
        text.Append(Escape(words)).Append('\n');
        return this;
    }

    /// <summary>A list with a mark, or with a box to tick.</summary>
    public Markdown List(IEnumerable<string> entries, bool boxes = false)
    {
        Gap();
        foreach (var entry in entries)
        {
            text.Append(boxes ? "- [ ] " : "- ").Append(Escape(entry)).Append('\n');
        }

        return this;
    }

    /// <summary>A list whose entries are numbered from 1.</summary>
    public Markdown Steps(IEnumerable<string> entries)
    {
        Gap();
        foreach (var (entry, index) in entries.Select((e, i) => (e, i)))
        {
            text.Append(System.Globalization.CultureInfo.InvariantCulture, $"{index + 1}. ").Append(Escape(entry)).Append('\n');
        }

        return this;
    }

    /// <summary>A table; nothing at all where it has no rows.</summary>
    public Markdown Table(PlainTable table)
    {
        if (table.Rows.IsEmpty)
        {
            return this;
        }

        Gap();
        Row(table.Columns.Select(c => c.Heading));
        text.Append('|');
        foreach (var column in table.Columns)
        {
            text.Append(column.IsNumber ? " ---: |" : " --- |");
        }

        text.Append('\n');
        foreach (var row in table.Rows)
        {
            Row(row);
        }

        return this;
    }

    public Paper ToPaper(string name) => Paper.OfText(name, ToString());

    public override string ToString() => text.ToString();

    /// <summary>Words as plain text: on one line, marks of the format escaped.</summary>
    internal static string Escape(string words)
    {
        var escaped = new StringBuilder(words.Length + 8);
        foreach (var c in words)
        {
            if (char.IsControl(c) || c is '\u2028' or '\u2029')
            {
                escaped.Append(' ');
                continue;
            }

            if (Marks.Contains(c, StringComparison.Ordinal))
            {
                escaped.Append('\\');
            }

            escaped.Append(c);
        }

        var line = escaped.ToString().Trim();
        return line is ['-' or '+' or '=', ' ' or '-' or '=', ..] ? "\\" + line : line;
    }

    private void Row(IEnumerable<string> cells)
    {
        text.Append('|');
        foreach (var cell in cells)
        {
            text.Append(' ').Append(Escape(cell)).Append(" |");
        }

        text.Append('\n');
    }

    private void Gap()
    {
        if (text.Length > 0)
        {
            text.Append('\n');
        }
    }
}
