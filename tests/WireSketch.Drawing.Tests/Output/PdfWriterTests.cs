using System.Text;
using UglyToad.PdfPig;
using UglyToad.PdfPig.Outline;
using WireSketch.Drawing.Output;
using Xunit;

namespace WireSketch.Drawing.Tests.Output;

/// <summary>PDFs read back by an independent reader.</summary>
public sealed class PdfWriterTests
{
    [Fact]
    public void Every_sheet_is_a_page_of_its_size_and_its_text_can_be_found()
    {
        using var pdf = PdfDocument.Open(Sample());
        Assert.Equal(12, pdf.NumberOfPages);
        var page = pdf.GetPage(2);
        Assert.Equal((792, 612), (page.MediaBox.Bounds.Width, page.MediaBox.Bounds.Height));
        var words = string.Join(' ', page.GetWords().Select(w => w.Text));
        Assert.Contains("AWG", words, StringComparison.Ordinal);
        Assert.Contains("Ω", page.Text, StringComparison.Ordinal);
        Assert.Contains("P1 · 4 AWG · RD · 17 ft", page.Text, StringComparison.Ordinal);
    }

    [Fact]
    public void Fonts_are_embedded_subsets_of_ours()
    {
        using var pdf = PdfDocument.Open(Sample());
        var fonts = pdf.GetPage(1).Letters.Select(l => l.FontName).Distinct().ToArray();
        Assert.Equal(2, fonts.Length);
        Assert.All(fonts, f => Assert.Matches(@"^[A-Z]{6}\+Inter", f));
        Assert.InRange(Sample().Length, 8_000, 150_000);
    }

    [Fact]
    public void Title_language_and_bookmarks_are_there_and_no_date()
    {
        var bytes = Sample();
        using var pdf = PdfDocument.Open(bytes);
        Assert.Equal("Bass upgrade", pdf.Information.Title);
        Assert.Null(pdf.Information.CreationDate);
        Assert.True(pdf.TryGetBookmarks(out var marks));
        var nodes = marks.Roots.OfType<DocumentBookmarkNode>().ToArray();
        Assert.Equal([.. Enumerable.Range(1, 12).Select(n => $"Sheet {n} · Ω")], nodes.Select(n => n.Title));
        Assert.Equal(Enumerable.Range(1, 12), nodes.Select(n => n.PageNumber));
        Assert.Contains("/Lang (en)", Encoding.Latin1.GetString(bytes), StringComparison.Ordinal);
    }

    [Fact]
    public void The_same_sheets_give_the_same_bytes() => Assert.Equal(Sample(), Sample());

    private static byte[] Sample() =>
        PdfWriter.Write([.. Enumerable.Range(1, 12).Select(n => SampleScene.Of($"Sheet {n} · Ω"))], "Bass upgrade");
}
