using System.Text.RegularExpressions;
using WireSketch.Testing;
using WireSketch.Testing.House;

namespace WireSketch.Tests.House;

/// <summary>
/// The order that <c>src/README.md</c> gives: stages, and within a stage its sub-folders. A type in the folder of a stage itself stands at
/// <c>.</c>, unless it is named in the row: so what the sub-folders share can stand first and what drives them last.
/// </summary>
internal static partial class Stages
{
    private const string Root = "WireSketch";

    /// <summary>The stages in order, each with the types it is entered by.</summary>
    public static (string Folder, string[] Entries)[] All { get; } =
        [.. Lines.Select(l => StageRow().Match(l)).Where(m => m.Success).Select(m => (m.Groups[1].Value, Names(m.Groups[2].Value)))];

    /// <summary>Of a stage with sub-folders their order: what stands in one entry is of one rank.</summary>
    public static IReadOnlyDictionary<string, string[][]> Inside { get; } = Lines
        .Select(l => InsideRow().Match(l))
        .Where(m => m.Success)
        .ToDictionary(m => m.Groups[1].Value, m => m.Groups[2].Value.Split(',').Select(Names).ToArray());

    private static string[] Lines => Repository.Read("src/README.md").Split('\n');

    /// <summary>The stage of a namespace; of the root of a library its own name. Null for a namespace that is not ours.</summary>
    public static string? StageOf(string space)
    {
        var parts = space.Split('.');
        return parts[0] != Root ? null
            : parts is [_, "Drawing", var folder, ..] ? folder
            : parts is [_, "Cli", ..] ? "Cli"
            : parts is [_, "Drawing"] ? "Drawing"
            : parts is [_, var stage, ..] ? stage
            : Root;
    }

    /// <summary>Rank of a stage: those of the table, then the roots of the libraries, then the command.</summary>
    public static int RankOf(string stage)
    {
        var place = Array.FindIndex(All, s => s.Folder == stage);
        return place >= 0 ? place
            : stage is Root or "Drawing" ? All.Length
            : stage is "Cli" ? All.Length + 1
            : throw new ArgumentException($"{stage} stands in no row of src/README.md", nameof(stage));
    }

    /// <summary>Rank of a type within its stage; null where the stage has no order inside.</summary>
    public static int? RankInside(OuterType type)
    {
        var stage = StageOf(type.Namespace)!;
        if (!Inside.TryGetValue(stage, out var order))
        {
            return null;
        }

        var parts = type.Namespace.Split('.');
        var below = parts[(Array.IndexOf(parts, stage) + 1)..];
        var place = below.Length > 0 ? below[0] : order.Any(rank => rank.Contains(type.Name)) ? type.Name : ".";
        var found = Array.FindIndex(order, rank => rank.Contains(place));
        return found >= 0 ? found : throw new ArgumentException($"{stage}/{place} stands in no row of src/README.md", nameof(type));
    }

    private static string[] Names(string cell) => [.. Name().Matches(cell).Select(n => n.Groups[1].Value)];

    [GeneratedRegex(@"^\| `(\w+)` \|[^|]*\| (.*) \|\s*$")]
    private static partial Regex StageRow();

    [GeneratedRegex(@"^\| `(\w+)` \| ([^|]*) \|\s*$")]
    private static partial Regex InsideRow();

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Name();
}
