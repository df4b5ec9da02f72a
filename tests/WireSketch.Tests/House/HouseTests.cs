using System.Text.RegularExpressions;
using WireSketch.Testing;

namespace WireSketch.Tests.House;

/// <summary>How the house is built: the table in <c>src/README.md</c> is the order of the stages, and the sources keep to it.</summary>
public sealed partial class HouseTests
{
    private const int MostLines = 400;

    private static readonly string[] Projects = ["WireSketch", "WireSketch.Drawing"];

    private static (string Folder, string[] Entries)[] Stages { get; } =
        [
            .. Repository.Read("src/README.md")
                .Split('\n')
                .Select(l => Row().Match(l))
                .Where(m => m.Success)
                .Select(m => (m.Groups[1].Value, Name().Matches(m.Groups[2].Value).Select(n => n.Groups[1].Value).ToArray()))
        ];

    public static TheoryData<string> Folders => [.. Stages.Select(s => s.Folder)];

    [Fact]
    public void The_table_names_every_folder_of_both_libraries() => Assert.Equal(
        Projects.SelectMany(p => Directory.GetDirectories(Path.Combine(Repository.Root, "src", p)))
            .Select(d => Path.GetFileName(d)!)
            .Where(n => n is not ("bin" or "obj"))
            .Order(StringComparer.Ordinal),
        Stages.Select(s => s.Folder).Order(StringComparer.Ordinal));

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_stage_uses_only_stages_above_it(string folder)
    {
        var own = Array.FindIndex(Stages, s => s.Folder == folder);
        var later = Stages[(own + 1)..].Select(s => s.Folder).ToHashSet(StringComparer.Ordinal);
        var files = Sources(folder).ToArray();
        Assert.NotEmpty(files);
        foreach (var file in files)
        {
            var text = Comment().Replace(File.ReadAllText(file), "");
            foreach (var used in Used().Matches(text).Select(m => m.Groups[1].Value))
            {
                Assert.False(later.Contains(used), $"{Path.GetFileName(file)} of {folder} uses {used}, which comes later");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void The_entry_of_a_stage_stands_in_its_folder(string folder) => Assert.All(
        Stages.Single(s => s.Folder == folder).Entries,
        entry =>
            Assert.Contains(
                Sources(folder),
                f => Regex.IsMatch(File.ReadAllText(f), $@"\b(class|record|struct|interface) {entry.Split('.')[0]}\b")));

    [Fact]
    public void Only_the_output_knows_the_graphics_library() => Assert.Equal(
        ["Output"],
        Everything().Where(f =>
            f.StartsWith(Path.Combine(Repository.Root, "src"), StringComparison.Ordinal)
                && File.ReadAllText(f).Contains("using SkiaSharp", StringComparison.Ordinal))
            .Select(f => Path.GetFileName(Path.GetDirectoryName(f)!))
            .Distinct());

    [Fact]
    public void No_file_is_longer_than_the_guide_allows() =>
        Assert.All(Everything(), f => Assert.True(File.ReadLines(f).Count() <= MostLines, $"{f} has more than {MostLines} lines"));

    [Fact]
    public void The_library_of_the_pipeline_reads_no_disk_no_clock_and_no_console()
    {
        foreach (var file in Projects.SelectMany(p => Under(Path.Combine(Repository.Root, "src", p))))
        {
            var found = Outside().Match(Comment().Replace(File.ReadAllText(file), ""));
            Assert.False(found.Success, $"{file} uses {found.Value}");
        }
    }

    private static IEnumerable<string> Sources(string folder) =>
        Projects.Select(p => Path.Combine(Repository.Root, "src", p, folder)).Where(Directory.Exists).SelectMany(Under);

    private static IEnumerable<string> Everything() =>
        Under(Path.Combine(Repository.Root, "src")).Concat(Under(Path.Combine(Repository.Root, "tests")));

    private static IEnumerable<string> Under(string folder) => Directory.EnumerateFiles(folder, "*.cs", SearchOption.AllDirectories)
        .Where(f =>
            !f.Contains($"{Path.DirectorySeparatorChar}obj{Path.DirectorySeparatorChar}", StringComparison.Ordinal)
                && !f.Contains($"{Path.DirectorySeparatorChar}bin{Path.DirectorySeparatorChar}", StringComparison.Ordinal));

    [GeneratedRegex(@"^\| `(\w+)` \|[^|]*\| (.*) \|\s*$")]
    private static partial Regex Row();

    [GeneratedRegex("`([^`]+)`")]
    private static partial Regex Name();

    /// <summary>A namespace of ours, in a using or before a name.</summary>
    [GeneratedRegex(@"\bWireSketch\.(?:Drawing\.)?([A-Z]\w*)")]
    private static partial Regex Used();

    [GeneratedRegex(@"//[^\n]*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"\b(File\.(Read|Write|Open|Exists)\w*|Directory\.\w+|Console\.\w+|DateTime\.(Now|UtcNow|Today)|DateTimeOffset\.(Now|UtcNow)|Environment\.(MachineName|UserName|CurrentDirectory|GetEnvironmentVariable)|Guid\.NewGuid|Random\.Shared)\b")]
    private static partial Regex Outside();
}
