using WireSketch.Testing;
using WireSketch.Testing.House;

namespace WireSketch.Tests.House;

/// <summary>Who uses whom, on the compiled assemblies: types of a stage use only stages above it in <c>src/README.md</c>.</summary>
public sealed class ArrowTests
{
    private static readonly Dictionary<string, OuterType> ByName =
        Assemblies.Arrows.Types.Where(t => Stages.StageOf(t.Namespace) is not null).DistinctBy(t => t.FullName)
            .ToDictionary(t => t.FullName, StringComparer.Ordinal);

    public static TheoryData<string> Folders => [.. Stages.All.Select(s => s.Folder), "WireSketch", "Cli"];

    public static TheoryData<string> Ordered => [.. Stages.Inside.Keys];

    [Theory]
    [MemberData(nameof(Folders))]
    public void A_stage_uses_only_stages_above_it(string stage)
    {
        var own = Stages.RankOf(stage);
        var arrows = From(stage);
        Assert.NotEmpty(arrows);
        None(arrows.Where(a => Stages.RankOf(StageOf(a.To)) > own).Select(a => $"{a.From} uses {a.To}, which comes later"));
    }

    [Theory]
    [MemberData(nameof(Ordered))]
    public void Sub_folders_use_only_those_before_them(string stage)
    {
        var arrows = From(stage).Where(a => StageOf(a.To) == stage).ToArray();
        Assert.NotEmpty(arrows);
        None(arrows
            .Where(a => Stages.RankInside(ByName[a.To]) > Stages.RankInside(ByName[a.From]))
            .Select(a => $"{a.From} uses {a.To}, which comes later"));
    }

    [Fact]
    public void The_reader_of_assemblies_sees_fields_signatures_locals_and_bodies()
    {
        var arrows = Assemblies.Arrows.All.ToHashSet();
        // In turn: a call in a body alone, a parameter's type alone, a type in a body of a nested type, and one across assemblies.
        Assert.Contains(new("WireSketch.Compiler", "WireSketch.Sizing.AutoSizer"), arrows);
        Assert.Contains(new("WireSketch.Language.SpecReader", "WireSketch.Text.ISpecFiles"), arrows);
        Assert.Contains(new("WireSketch.Rules.RuleBook", "WireSketch.Diagnostics.Finding"), arrows);
        Assert.Contains(new("WireSketch.Cli.Outputs.BuildPapers", "WireSketch.Drawing.Output.SvgWriter"), arrows);
        Assert.DoesNotContain(arrows, a => a.From == a.To);
    }

    [Fact]
    public void No_two_types_have_one_name() =>
        None(ByName.Values.GroupBy(t => t.Name)
            .Where(g => g.Count() > 1)
            .Select(g => string.Join(" and ", g.Select(t => t.FullName))));

    [Fact]
    public void A_file_stands_in_the_folder_of_its_namespace()
    {
        // A file of statements alone, where the program begins, has no namespace.
        foreach (var file in Sources.OfProduct.Where(f => Path.GetFileName(f) != "Program.cs"))
        {
            var folder = Path.GetRelativePath(Path.Combine(Repository.Root, "src"), Path.GetDirectoryName(file)!);
            var space = folder.Replace(Path.DirectorySeparatorChar, '.');
            var isThere = File.ReadAllText(file).Contains($"namespace {space};", StringComparison.Ordinal);
            Assert.True(isThere, $"{folder}/{Path.GetFileName(file)} is not of {space}");
        }
    }

    /// <summary>Fails with every sentence in full.</summary>
    private static void None(IEnumerable<string> faults)
    {
        var all = string.Join('\n', faults);
        Assert.True(all.Length == 0, all);
    }

    private static TypeArrow[] From(string stage) =>
        [.. Assemblies.Arrows.All.Where(a => ByName.ContainsKey(a.From) && ByName.ContainsKey(a.To) && StageOf(a.From) == stage)];

    private static string StageOf(string type) => Stages.StageOf(ByName[type].Namespace)!;
}
