using System.Collections.Immutable;
using System.Globalization;
using System.Text;
using System.Text.RegularExpressions;

namespace WireSketch.Drawing.Output;

/// <summary>
/// Adds bookmarks and a language to a PDF by an incremental update (ISO 32000-1, 7.5.6 and 12.3.3): what was written stays as it
/// is, and a new catalog with the outline's items and a second table of places follow it.
/// </summary>
internal static partial class PdfBookmarks
{
    /// <summary>The file with one bookmark for each page.</summary>
    public static byte[] Add(byte[] pdf, ImmutableArray<string> names)
    {
        // Latin-1 keeps bytes and characters one to one, so that an index is an offset.
        var text = Encoding.Latin1.GetString(pdf);
        var start = int.Parse(StartOfTable().Matches(text)[^1].Groups[1].ValueSpan, CultureInfo.InvariantCulture);
        var trailer = text[text.LastIndexOf("trailer", StringComparison.Ordinal)..];
        var size = Number(trailer, "/Size ");
        var root = Number(trailer, "/Root ");
        var info = Number(trailer, "/Info ");
        var catalog = Object(text, root);
        var pages = Pages(text, Number(catalog, "/Pages ")).ToArray();

        var update = new StringBuilder();
        var places = new SortedDictionary<int, int>();
        void Write(int number, string body)
        {
            places[number] = pdf.Length + update.Length;
            update.Append(CultureInfo.InvariantCulture, $"{number} 0 obj\n{body}\nendobj\n");
        }

        update.Append('\n');
        Write(
            root,
            catalog[..catalog.LastIndexOf(">>", StringComparison.Ordinal)]
                + string.Create(CultureInfo.InvariantCulture, $"\n/Outlines {size} 0 R\n/PageMode /UseOutlines\n/Lang (en)>>"));
        Write(
            size,
            string.Create(
                CultureInfo.InvariantCulture,
                $"<</Type /Outlines /First {size + 1} 0 R /Last {size + pages.Length} 0 R /Count {pages.Length}>>"));
        for (var i = 0; i < pages.Length; i++)
        {
            var item = new StringBuilder();
            item.Append(CultureInfo.InvariantCulture, $"<</Title {Words(names[i])} /Parent {size} 0 R");
            if (i > 0)
            {
                item.Append(CultureInfo.InvariantCulture, $" /Prev {size + i} 0 R");
            }

            if (i < pages.Length - 1)
            {
                item.Append(CultureInfo.InvariantCulture, $" /Next {size + i + 2} 0 R");
            }

            item.Append(CultureInfo.InvariantCulture, $" /Dest [{pages[i]} 0 R /Fit]>>");
            Write(size + i + 1, item.ToString());
        }

        var table = pdf.Length + update.Length;
        update.Append(CultureInfo.InvariantCulture, $"xref\n{root} 1\n{places[root]:0000000000} 00000 n \n{size} {pages.Length + 1}\n");
        foreach (var (_, place) in places.Where(p => p.Key >= size))
        {
            update.Append(CultureInfo.InvariantCulture, $"{place:0000000000} 00000 n \n");
        }

        update.Append(
            CultureInfo.InvariantCulture,
            $"trailer\n<</Size {size + pages.Length + 1} /Root {root} 0 R /Info {info} 0 R /Prev {start}>>\nstartxref\n{table}\n%%EOF\n");
        return [.. pdf, .. Encoding.Latin1.GetBytes(update.ToString())];
    }

    /// <summary>Numbers of the page objects in order.</summary>
    private static IEnumerable<int> Pages(string text, int node)
    {
        var body = Object(text, node);
        var kids = body.IndexOf("/Kids", StringComparison.Ordinal);
        if (kids < 0)
        {
            return [node];
        }

        var list = body[kids..body.IndexOf(']', kids)];
        return Reference().Matches(list).SelectMany(m => Pages(text, int.Parse(m.Groups[1].ValueSpan, CultureInfo.InvariantCulture)));
    }

    /// <summary>What stands between <c>obj</c> and <c>endobj</c>.</summary>
    private static string Object(string text, int number)
    {
        var head = string.Create(CultureInfo.InvariantCulture, $"\n{number} 0 obj\n");
        var at = text.IndexOf(head, StringComparison.Ordinal) + head.Length;
        return text[at..text.IndexOf("endobj", at, StringComparison.Ordinal)].TrimEnd();
    }

    private static int Number(string text, string key)
    {
        var at = text.IndexOf(key, StringComparison.Ordinal) + key.Length;
        var end = at;
        while (char.IsAsciiDigit(text[end]))
        {
            end++;
        }

        return int.Parse(text.AsSpan(at, end - at), CultureInfo.InvariantCulture);
    }

    /// <summary>A text string in UTF-16 with byte order mark, as hexadecimal digits.</summary>
    private static string Words(string words) => $"<FEFF{Convert.ToHexString(Encoding.BigEndianUnicode.GetBytes(words))}>";

    [GeneratedRegex(@"startxref\s+(\d+)")]
    private static partial Regex StartOfTable();

    [GeneratedRegex(@"(\d+) 0 R")]
    private static partial Regex Reference();
}
