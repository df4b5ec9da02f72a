using System.Collections.Immutable;

namespace WireSketch.Tables;

/// <summary>Reads the plain comma-separated tables that are built into the library: a heading, no quotes.</summary>
internal static class TableData
{
    /// <summary>The rows below the heading, cut into cells.</summary>
    public static ImmutableArray<string[]> Rows(string name)
    {
        using var stream = typeof(TableData).Assembly.GetManifestResourceStream($"WireSketch.Tables.Data.{name}")
            ?? throw new InvalidOperationException($"The table {name} is not built in.");
        using var reader = new StreamReader(stream);
        return [.. reader.ReadToEnd().Split('\n', StringSplitOptions.RemoveEmptyEntries).Skip(1).Select(line => line.TrimEnd('\r').Split(','))];
    }
}
