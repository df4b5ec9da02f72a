using System.Text;

namespace WireSketch.Documents;

/// <summary>A finished file: its name and its bytes.</summary>
public sealed record Paper(string Name, ReadOnlyMemory<byte> Bytes)
{
    /// <summary>A text file in UTF-8, without a byte order mark.</summary>
    public static Paper OfText(string name, string text) => new(name, new UTF8Encoding(false).GetBytes(text));
}
