using System.Collections.Immutable;
using System.Text;

namespace WireSketch.Text;

/// <summary>A short name for exactly these words: what was built from them can be told from what was built from others.</summary>
internal static class Fingerprint
{
    private const int Letters = 12;

    /// <summary>
    /// The first 12 hexadecimal digits of the SHA-256 (FIPS 180-4) of the files, one after the other, in UTF-8 with LF line ends:
    /// neither the place of a file nor the line ends that an editor chose make a difference.
    /// </summary>
    public static string Of(SourceFile file, ImmutableArray<SourceFile> used)
    {
        using var bytes = new MemoryStream();
        foreach (var text in used.Prepend(file).Select(f => f.Text.ReplaceLineEndings("\n")))
        {
            bytes.Write(Encoding.UTF8.GetBytes(text));
            bytes.WriteByte(0);
        }

        return Convert.ToHexStringLower(Sha256.Hash(bytes.ToArray()))[..Letters];
    }

    /// <summary>In groups of four, as it is printed.</summary>
    public static string ForPeople(string fingerprint) => string.Join(' ', fingerprint.Chunk(4).Select(c => new string(c)));
}
