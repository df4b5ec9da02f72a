using System.Runtime.InteropServices;
using WireSketch.Drawing.Fonts;
using WireSketch.Drawing.Scenes;

namespace WireSketch.Drawing.Output;

/// <summary>
/// The bundled font cut down to the characters that are used, so that a file carries a few kilobytes instead of a third of a
/// megabyte. Kerning, ligatures and hinting are left out: every program that shows the file then sets the text alike.
/// </summary>
internal static partial class FontSubset
{
    private const string Library = "libHarfBuzzSharp";
    private const int Unicode = 1;
    private const int DropTables = 3;
    private const uint NoHinting = 1;

    /// <summary>The subset of one weight for the texts of scenes; null if none of them uses it.</summary>
    public static byte[]? For(IEnumerable<Scene> scenes, FontWeight weight)
    {
        var characters = new SortedSet<int>(
            scenes.SelectMany(s => s.All()).OfType<TextShape>().SelectMany(t => t.Spans).Where(s => s.Weight == weight)
                .SelectMany(s => s.Words.EnumerateRunes()).Select(r => r.Value));
        return characters.Count == 0 ? null : Of(FontMetrics.Face(weight), characters);
    }

    /// <summary>A font file with these characters and no others.</summary>
    public static byte[] Of(FontFace font, IEnumerable<int> characters)
    {
        nint blob = BlobCreate(font.Data, (uint)font.Data.Length, 0, 0, 0), face = 0, input = 0, subset = 0, result = 0;
        try
        {
            face = FaceCreate(blob, 0);
            input = InputCreate();
            var wanted = InputSet(input, Unicode);
            foreach (var character in characters)
            {
                SetAdd(wanted, (uint)character);
            }

            var dropped = InputSet(input, DropTables);
            foreach (var table in (string[])["GPOS", "GSUB", "GDEF", "kern", "DSIG"])
            {
                SetAdd(dropped, ((uint)table[0] << 24) | ((uint)table[1] << 16) | ((uint)table[2] << 8) | table[3]);
            }

            InputSetFlags(input, NoHinting);
            subset = Subset(face, input);
            if (subset == 0)
            {
                throw new InvalidOperationException("the bundled font cannot be cut down");
            }

            result = FaceBlob(subset);
            var data = BlobData(result, out var length);
            var bytes = new byte[length];
            Marshal.Copy(data, bytes, 0, bytes.Length);
            return bytes;
        }
        finally
        {
            BlobDestroy(result);
            FaceDestroy(subset);
            InputDestroy(input);
            FaceDestroy(face);
            BlobDestroy(blob);
        }
    }

    [LibraryImport(Library, EntryPoint = "hb_blob_create")]
    private static partial nint BlobCreate(ReadOnlySpan<byte> data, uint length, int copied, nint user, nint destroy);

    [LibraryImport(Library, EntryPoint = "hb_blob_get_data")]
    private static partial nint BlobData(nint blob, out uint length);

    [LibraryImport(Library, EntryPoint = "hb_blob_destroy")]
    private static partial void BlobDestroy(nint blob);

    [LibraryImport(Library, EntryPoint = "hb_face_create")]
    private static partial nint FaceCreate(nint blob, uint index);

    [LibraryImport(Library, EntryPoint = "hb_face_reference_blob")]
    private static partial nint FaceBlob(nint face);

    [LibraryImport(Library, EntryPoint = "hb_face_destroy")]
    private static partial void FaceDestroy(nint face);

    [LibraryImport(Library, EntryPoint = "hb_subset_input_create_or_fail")]
    private static partial nint InputCreate();

    [LibraryImport(Library, EntryPoint = "hb_subset_input_set")]
    private static partial nint InputSet(nint input, int kind);

    [LibraryImport(Library, EntryPoint = "hb_subset_input_set_flags")]
    private static partial void InputSetFlags(nint input, uint flags);

    [LibraryImport(Library, EntryPoint = "hb_subset_input_destroy")]
    private static partial void InputDestroy(nint input);

    [LibraryImport(Library, EntryPoint = "hb_subset_or_fail")]
    private static partial nint Subset(nint face, nint input);

    [LibraryImport(Library, EntryPoint = "hb_set_add")]
    private static partial void SetAdd(nint set, uint value);
}
