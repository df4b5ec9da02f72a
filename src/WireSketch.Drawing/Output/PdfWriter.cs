using System.Collections.Immutable;
using SkiaSharp;
using WireSketch.Drawing.Scenes;

namespace WireSketch.Drawing.Output;

/// <summary>
/// Writes scenes as one PDF: a page for each, vectors, text that can be selected and searched, a subset of the font, bookmarks.
/// </summary>
public static class PdfWriter
{
    /// <summary>The file. It holds no date and nothing random: the same scenes give the same bytes.</summary>
    /// <param name="scenes">The sheets in order; at least one.</param>
    /// <param name="title">The document's title.</param>
    /// <exception cref="ArgumentException">There is no sheet.</exception>
    public static byte[] Write(ImmutableArray<Scene> scenes, string title)
    {
        if (scenes.IsEmpty)
        {
            throw new ArgumentException("a document has at least one sheet", nameof(scenes));
        }

        using var file = new MemoryStream();
        using (var painter = new ScenePainter(scenes))
        using (var document = SKDocument.CreatePdf(
            file,
            new SKDocumentPdfMetadata { Title = title, Creator = "WireSketch", RasterDpi = 300, EncodingQuality = 101 }))
        {
            foreach (var scene in scenes)
            {
                painter.Paint(document.BeginPage((float)scene.Width.Value, (float)scene.Height.Value), scene);
                document.EndPage();
            }

            document.Close();
        }

        return PdfBookmarks.Add(file.ToArray(), [.. scenes.Select(s => s.Name)]);
    }
}
