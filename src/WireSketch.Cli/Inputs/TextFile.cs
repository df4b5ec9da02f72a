using System.Text;
using WireSketch.Syntax;

namespace WireSketch.Cli.Inputs;

/// <summary>Reads a text as people's editors leave it.</summary>
internal static class TextFile
{
    /// <summary>More bytes than any spec that the language allows.</summary>
    private const int MostBytes = 4 * SyntaxTree.LargestFile;

    /// <summary>Reads a file.</summary>
    /// <exception cref="IOException">It cannot be read.</exception>
    /// <exception cref="UnauthorizedAccessException">It may not be read.</exception>
    public static string Read(string path)
    {
        if (Directory.Exists(path))
        {
            throw new IOException("it is a folder");
        }

        using var stream = new FileStream(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
        return Read(stream);
    }

    /// <summary>Reads a stream to its end.</summary>
    /// <exception cref="IOException">It cannot be read, or holds more than a spec may.</exception>
    public static string Read(Stream stream)
    {
        using var bytes = new MemoryStream();
        var buffer = new byte[81920];
        int count;
        while ((count = stream.Read(buffer)) > 0)
        {
            bytes.Write(buffer, 0, count);
            if (bytes.Length > MostBytes)
            {
                throw new IOException($"it is larger than {MostBytes / 1024 / 1024} MB");
            }
        }

        return Decode(bytes.GetBuffer().AsSpan(0, (int)bytes.Length));
    }

    /// <summary>
    /// UTF-8, with or without a mark, or UTF-16 with one. A byte that is no UTF-8 becomes half a surrogate pair of its own
    /// (U+DC00 and the byte): the reader then points to its place.
    /// </summary>
    internal static string Decode(ReadOnlySpan<byte> bytes)
    {
        switch (bytes)
        {
            case [0xEF, 0xBB, 0xBF, ..]:
                bytes = bytes[3..];
                break;
            case [0xFF, 0xFE, ..]:
                return Encoding.Unicode.GetString(bytes[2..]);
            case [0xFE, 0xFF, ..]:
                return Encoding.BigEndianUnicode.GetString(bytes[2..]);
            default:
                break;
        }

        try
        {
            return new UTF8Encoding(false, throwOnInvalidBytes: true).GetString(bytes);
        }
        catch (DecoderFallbackException)
        {
            return DecodeDamaged(bytes);
        }
    }

    private static string DecodeDamaged(ReadOnlySpan<byte> bytes)
    {
        const char firstHalf = '\uDC00';
        var text = new StringBuilder(bytes.Length);
        Span<char> pair = stackalloc char[2];
        while (!bytes.IsEmpty)
        {
            if (Rune.DecodeFromUtf8(bytes, out var rune, out var length) == System.Buffers.OperationStatus.Done)
            {
                text.Append(pair[..rune.EncodeToUtf16(pair)]);
                bytes = bytes[length..];
            }
            else
            {
                text.Append((char)(firstHalf + bytes[0]));
                bytes = bytes[1..];
            }
        }

        return text.ToString();
    }
}
