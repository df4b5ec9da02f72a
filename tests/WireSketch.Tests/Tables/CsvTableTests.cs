using WireSketch.Tables;

namespace WireSketch.Tests.Tables;

/// <summary>Tables are read as RFC 4180 has them.</summary>
public sealed class CsvTableTests
{
    [Fact]
    public void Quotes_commas_and_empty_cells_are_read_as_RFC_4180_has_them()
    {
        var table = CsvTable.Parse("name,value,note\n\"a, b\",1.50,\"he said \"\"no\"\"\"\r\nc,,\n\n");
        Assert.Equal(["name", "value", "note"], table.Columns);
        Assert.Equal(2, table.Rows.Length);
        Assert.Equal(("a, b", "1.50", "he said \"no\""), (table.Rows[0]["name"], table.Rows[0]["value"], table.Rows[0]["note"]));
        Assert.Equal(1.5, table.Rows[0].Number("value"));
        Assert.Null(table.Rows[1].NumberOrNone("value"));
        Assert.Equal("", table.Rows[1]["note"]);
    }

    /// <summary>A spreadsheet writes a byte order mark at the start.</summary>
    [Fact]
    public void A_byte_order_mark_is_no_part_of_the_heading() => Assert.Equal(["a", "b"], CsvTable.Parse("\uFEFFa,b\n1,2\n").Columns);
}
