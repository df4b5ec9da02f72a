using System.Text;
using WireSketch.Documents.Formats;

namespace WireSketch.Tests.Documents.Formats;

public sealed class CsvPaperTests
{
    // RFC 4180, sections 2.1, 2.3, 2.6 and 2.7: CR LF, a header, quotes around line breaks, quotes and commas, quotes doubled.
    [Fact]
    public void It_is_as_RFC_4180_has_it_with_a_byte_order_mark()
    {
        var bytes = CsvPaper.Write("x.csv", new([new("a"), new("b")], [["1,5", "say \"no\""], ["Ω", ""]])).Bytes.ToArray();
        Assert.Equal("\uFEFFa,b\r\n\"1,5\",\"say \"\"no\"\"\"\r\nΩ,\r\n", Encoding.UTF8.GetString(bytes));
    }

    // What spreadsheets take for a formula: OWASP, "CSV Injection" (from memory).
    [Theory]
    [InlineData("=1+1")]
    [InlineData("+1")]
    [InlineData("-1")]
    [InlineData("@SUM(A1)")]
    [InlineData("\t=1")]
    [InlineData(" =1")]
    [InlineData("\r\n=1")]
    public void No_cell_can_be_taken_for_a_formula(string cell)
    {
        var text = Encoding.UTF8.GetString(CsvPaper.Write("x.csv", new([new("a")], [[cell]])).Bytes.Span).Split("\r\n")[1];
        Assert.StartsWith("'", text.Trim('"'), StringComparison.Ordinal);
    }

    [Fact]
    public void A_cell_stays_on_one_line() =>
        Assert.Equal(
            "\uFEFFa\r\nx y z\r\n",
            Encoding.UTF8.GetString(CsvPaper.Write("x.csv", new([new("a")], [["x\r\ny\u2028z"]])).Bytes.Span));
}
