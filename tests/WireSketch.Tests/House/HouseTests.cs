using System.Text.RegularExpressions;
using WireSketch.Testing;
using WireSketch.Testing.House;

namespace WireSketch.Tests.House;

/// <summary>How the house is built, as far as its source files show it.</summary>
public sealed partial class HouseTests
{
    private const int MostLines = 400;
    private const int MostWidth = 140;
    private const int MostParameters = 6;

    private static readonly string[] Libraries = ["WireSketch", "WireSketch.Drawing"];

    /// <summary>Folders all of whose lines can be read without turning the head.</summary>
    private static readonly string[] Narrow =
    [
        "src/WireSketch/Text", "src/WireSketch/Quantities", "src/WireSketch/Tables", "src/WireSketch/Syntax",
        "src/WireSketch.Drawing/Fonts", "src/WireSketch.Drawing/Layout", "src/WireSketch.Drawing/Scenes",
        "src/WireSketch.Drawing/Output", "src/WireSketch.Cli", "tests/WireSketch.Drawing.Tests", "tests/WireSketch.Cli.Tests",
        "tests/WireSketch.Benchmarks/Layouts", "tests/WireSketch.Testing/House", "tests/WireSketch.Tests/House",
        "tests/WireSketch.Tests/Quantities", "tests/WireSketch.Tests/Syntax", "tests/WireSketch.Tests/Tables",
        "tests/WireSketch.Tests/Text",
    ];

    /// <summary>Namespaces in which nothing takes more than a few arguments by place.</summary>
    private static readonly string[] Short =
    [
        "WireSketch.Text", "WireSketch.Diagnostics", "WireSketch.Quantities", "WireSketch.Tables", "WireSketch.Syntax",
        "WireSketch.Drawing.Fonts", "WireSketch.Drawing.Layout.Model", "WireSketch.Drawing.Layout.P1Columns",
        "WireSketch.Drawing.Layout.P2Order", "WireSketch.Drawing.Layout.P3Place", "WireSketch.Drawing.Layout.P4Route",
        "WireSketch.Drawing.Layout.P5Label", "WireSketch.Drawing.Layout.Search", "WireSketch.Drawing.Scenes", "WireSketch.Drawing.Output",
        "WireSketch.Cli",
    ];

    public static TheoryData<string> Folders => [.. Stages.All.Select(s => s.Folder)];

    public static TheoryData<string> NarrowFolders => [.. Narrow];

    [Fact]
    public void The_table_names_every_folder_of_both_libraries() => Assert.Equal(
        Libraries.SelectMany(p => Directory.GetDirectories(Path.Combine(Repository.Root, "src", p)))
            .Select(d => Path.GetFileName(d)!)
            .Where(n => n is not ("bin" or "obj"))
            .Order(StringComparer.Ordinal),
        Stages.All.Select(s => s.Folder).Order(StringComparer.Ordinal));

    /// <summary>The compiled assemblies do not show where a constant came from; the sources do.</summary>
    [Theory]
    [MemberData(nameof(Folders))]
    public void A_stage_names_no_namespace_of_a_later_one(string folder)
    {
        var own = Stages.RankOf(folder);
        var files = OfStage(folder).ToArray();
        Assert.NotEmpty(files);
        foreach (var file in files)
        {
            var text = Comment().Replace(File.ReadAllText(file), "");
            foreach (var used in Used().Matches(text).Select(m => m.Groups[1].Value).Where(u => Stages.All.Any(s => s.Folder == u)))
            {
                Assert.False(Stages.RankOf(used) > own, $"{Path.GetFileName(file)} of {folder} uses {used}, which comes later");
            }
        }
    }

    [Theory]
    [MemberData(nameof(Folders))]
    public void The_entry_of_a_stage_stands_in_its_folder(string folder) => Assert.All(
        Stages.All.Single(s => s.Folder == folder).Entries,
        entry => Assert.Contains(
            OfStage(folder),
            f => Regex.IsMatch(File.ReadAllText(f), $@"\b(class|record|struct|interface) {entry.Split('.')[0]}\b")));

    [Fact]
    public void Only_the_output_knows_the_graphics_library() => Assert.Equal(
        ["Output"],
        Sources.OfProduct.Where(f => File.ReadAllText(f).Contains("using SkiaSharp", StringComparison.Ordinal))
            .Select(f => Path.GetFileName(Path.GetDirectoryName(f)!))
            .Distinct());

    [Fact]
    public void No_file_is_longer_than_the_guide_allows() =>
        Assert.All(Sources.All, f => Assert.True(File.ReadLines(f).Count() <= MostLines, $"{f} has more than {MostLines} lines"));

    [Theory]
    [MemberData(nameof(NarrowFolders))]
    public void No_line_is_wider_than_the_guide_allows(string folder)
    {
        var files = Sources.Under(folder).ToArray();
        Assert.NotEmpty(files);
        Assert.Empty(files.SelectMany(f => File.ReadLines(f).Select((line, i) => (line, i))
            .Where(l => l.line.Length > MostWidth && Path.GetFileName(f) != "YamlMistakes.cs")
            .Select(l => $"{Path.GetRelativePath(Repository.Root, f)}:{l.i + 1} is {l.line.Length} wide")));
    }

    [Fact]
    public void Nothing_takes_more_arguments_by_place_than_the_guide_allows()
    {
        var counts = new[] { "WireSketch", "WireSketch.Drawing", "WireSketch.Cli" }
            .SelectMany(a => ParameterCount.In(Assemblies.PathOf(a)))
            .Where(c => Short.Any(s => c.Namespace == s || c.Namespace.StartsWith(s + ".", StringComparison.Ordinal)))
            .ToArray();
        Assert.Contains(counts, c => c.Count == MostParameters);
        Assert.Empty(counts.Where(c => c.Count > MostParameters).Select(c => $"{c.Member} takes {c.Count}"));
    }

    [Fact]
    public void The_library_of_the_pipeline_reads_no_disk_no_clock_and_no_console()
    {
        foreach (var file in Libraries.SelectMany(p => Sources.Under("src/" + p)))
        {
            var found = Outside().Match(Comment().Replace(File.ReadAllText(file), ""));
            Assert.False(found.Success, $"{file} uses {found.Value}");
        }
    }

    private static IEnumerable<string> OfStage(string folder) => Libraries
        .Select(p => $"src/{p}/{folder}")
        .Where(f => Directory.Exists(Path.Combine(Repository.Root, f)))
        .SelectMany(Sources.Under);

    /// <summary>A namespace of ours, in a using or before a name.</summary>
    [GeneratedRegex(@"\bWireSketch\.(?:Drawing\.)?([A-Z]\w*)")]
    private static partial Regex Used();

    [GeneratedRegex(@"//[^\n]*")]
    private static partial Regex Comment();

    [GeneratedRegex(@"\b(File\.(Read|Write|Open|Exists)\w*|Directory\.\w+|Console\.\w+|DateTime\.(Now|UtcNow|Today)"
        + @"|DateTimeOffset\.(Now|UtcNow)|Environment\.(MachineName|UserName|CurrentDirectory|GetEnvironmentVariable)"
        + @"|Guid\.NewGuid|Random\.Shared)\b")]
    private static partial Regex Outside();
}
