using System.Buffers.Binary;

namespace WireSketch.Drawing.Fonts;

/// <summary>
/// One font file, as far as setting single lines needs it: which glyph a character has and how wide that is. Reads the tables
/// head, hhea, hmtx and cmap (formats 4 and 12) as the OpenType specification 1.9 lays them out.
/// </summary>
internal sealed class FontFace
{
    private readonly byte[] data;
    private readonly Dictionary<string, (int Offset, int Length)> tables;
    private readonly int hmtx;
    private readonly int longMetrics;
    private readonly int map;
    private readonly int mapFormat;

    public FontFace(byte[] data)
    {
        this.data = data;
        tables = new(StringComparer.Ordinal);
        var count = U16(4);
        for (var i = 0; i < count; i++)
        {
            var at = 12 + (i * 16);
            tables[System.Text.Encoding.ASCII.GetString(data, at, 4)] = (I32(at + 8), I32(at + 12));
        }

        UnitsPerEm = U16(tables["head"].Offset + 18);
        var hhea = tables["hhea"].Offset;
        Ascent = I16(hhea + 4);
        Descent = -I16(hhea + 6);
        longMetrics = U16(hhea + 34);
        hmtx = tables["hmtx"].Offset;
        (map, mapFormat) = FindMap();
    }

    /// <summary>The file itself.</summary>
    public ReadOnlySpan<byte> Data => data;

    public int UnitsPerEm { get; }

    /// <summary>Height of the line above the baseline, in font units.</summary>
    public int Ascent { get; }

    /// <summary>Depth of the line below the baseline, in font units, as a positive number.</summary>
    public int Descent { get; }

    /// <summary>Names of the tables in the file.</summary>
    public IReadOnlyCollection<string> Tables => tables.Keys;

    /// <summary>The glyph of a character; 0 if the font has none.</summary>
    public int Glyph(int character) => mapFormat == 12 ? GlyphOf12(character) : GlyphOf4(character);

    /// <summary>How far a glyph moves the pen, in font units.</summary>
    public int Advance(int glyph) => U16(hmtx + (Math.Min(glyph, longMetrics - 1) * 4));

    private (int Offset, int Format) FindMap()
    {
        var cmap = tables["cmap"].Offset;
        var best = (Offset: 0, Format: 0);
        for (var i = 0; i < U16(cmap + 2); i++)
        {
            var offset = cmap + I32(cmap + 4 + (i * 8) + 4);
            var format = U16(offset);
            if (format is 4 or 12 && format > best.Format)
            {
                best = (offset, format);
            }
        }

        return best.Format != 0 ? best : throw new InvalidDataException("the font has no Unicode character map");
    }

    private int GlyphOf4(int character)
    {
        if (character > 0xFFFF)
        {
            return 0;
        }

        var segments = U16(map + 6) / 2;
        var ends = map + 14;
        var starts = ends + (segments * 2) + 2;
        var deltas = starts + (segments * 2);
        var ranges = deltas + (segments * 2);
        for (var i = 0; i < segments; i++)
        {
            if (U16(ends + (i * 2)) < character)
            {
                continue;
            }

            var start = U16(starts + (i * 2));
            if (start > character)
            {
                return 0;
            }

            var range = U16(ranges + (i * 2));
            if (range == 0)
            {
                return (character + U16(deltas + (i * 2))) & 0xFFFF;
            }

            var glyph = U16(ranges + (i * 2) + range + ((character - start) * 2));
            return glyph == 0 ? 0 : (glyph + U16(deltas + (i * 2))) & 0xFFFF;
        }

        return 0;
    }

    private int GlyphOf12(int character)
    {
        for (var i = 0; i < I32(map + 12); i++)
        {
            var group = map + 16 + (i * 12);
            if (character <= I32(group + 4))
            {
                return character >= I32(group) ? I32(group + 8) + character - I32(group) : 0;
            }
        }

        return 0;
    }

    private int U16(int at) => BinaryPrimitives.ReadUInt16BigEndian(data.AsSpan(at));

    private int I16(int at) => BinaryPrimitives.ReadInt16BigEndian(data.AsSpan(at));

    private int I32(int at) => BinaryPrimitives.ReadInt32BigEndian(data.AsSpan(at));
}
