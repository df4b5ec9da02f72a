using WireSketch.Testing;

namespace WireSketch.Cli.Tests.Commands;

public sealed class BuildTests
{
    [Fact]
    public async Task A_spec_is_built_into_a_folder_of_its_name_in_the_current_one()
    {
        using var shop = new Shop().With("jobs/a.wsk.yaml", Shop.OneAmplifier);
        var said = await shop.Type("build", "jobs/a.wsk.yaml");
        Assert.Equal(0, said.Code);
        Assert.Contains("wrote a/: ", said.Error, StringComparison.Ordinal);
        foreach (var name in new[]
        {
            "drawing.svg", "drawing.png", "drawing.pdf", "parts.csv", "parts.md", "cuts.csv", "cuts.md", "report.md", "report.json",
            "findings.json", "findings.md", "setup.md", "handover.md"
        })
        {
            Assert.True(new FileInfo(shop.At("a/" + name)).Length > 0, name);
            Assert.Contains(name, said.Error, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_spec_with_an_error_is_drawn_all_the_same_and_ends_with_1()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.NoFuse);
        var said = await shop.Type("build", "b.wsk.yaml");
        Assert.Equal(1, said.Code);
        Assert.Contains("NOT FOR INSTALLATION", said.Error, StringComparison.Ordinal);
        Assert.Contains("NOT FOR INSTALLATION", shop.Read("b/drawing.svg"), StringComparison.Ordinal);
        Assert.Contains("NOT FOR INSTALLATION", shop.Read("b/parts.md"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_spec_that_cannot_be_understood_gives_its_findings_alone()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        var said = await shop.Type("build", "b.wsk.yaml");
        Assert.Equal(1, said.Code);
        Assert.Equal(
            ["findings.json", "findings.md"],
            Directory.GetFiles(shop.At("b")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task What_is_the_same_already_is_left_alone()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        await shop.Type("build", "b.wsk.yaml");
        var before = new DateTime(2020, 1, 1, 0, 0, 0, DateTimeKind.Utc);
        File.SetLastWriteTimeUtc(shop.At("b/findings.json"), before);
        var said = await shop.Type("build", "b.wsk.yaml");
        Assert.Contains("wrote b/: 0 files, 2 unchanged", said.Error, StringComparison.Ordinal);
        Assert.Equal(before, File.GetLastWriteTimeUtc(shop.At("b/findings.json")));
    }

    [Fact]
    public async Task Several_specs_each_get_a_folder_in_the_one_that_is_named()
    {
        using var shop = new Shop().With("jobs/a.wsk.yaml", Shop.UnknownGear).With("jobs/deep/b.wsk.yaml", Shop.UnknownGear);
        Assert.Equal(1, (await shop.Type("build", "jobs/**/*.wsk.yaml", "-o", "out")).Code);
        Assert.True(File.Exists(shop.At("out/a/findings.json")));
        Assert.True(File.Exists(shop.At("out/b/findings.json")));
    }

    [Fact]
    public async Task A_file_that_stands_where_the_folder_should_be_is_trouble_and_stays()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear).With("b", "mine");
        var said = await shop.Type("build", "b.wsk.yaml");
        Assert.Equal(2, said.Code);
        Assert.Contains("cannot be written", said.Error, StringComparison.Ordinal);
        Assert.Equal("mine", shop.Read("b"));
    }

    [Fact]
    public async Task A_folder_inside_a_file_cannot_be_written()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        var said = await shop.Type("build", "b.wsk.yaml", "-o", "b.wsk.yaml/x");
        Assert.Equal(2, said.Code);
        Assert.Contains("wiresketch: b.wsk.yaml/x cannot be written: ", said.Error, StringComparison.Ordinal);
    }

    [Fact]
    public async Task A_folder_that_stands_where_a_file_should_be_leaves_nothing_half_written()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear);
        Directory.CreateDirectory(shop.At("b/findings.md"));
        Assert.Equal(2, (await shop.Type("build", "b.wsk.yaml")).Code);
        Assert.DoesNotContain(Directory.GetFiles(shop.At("b")), f => f.EndsWith(".part", StringComparison.Ordinal));
    }

    [Fact]
    public async Task Nothing_written_names_a_place_on_this_machine()
    {
        using var shop = new Shop().With("jobs/a.wsk.yaml", Shop.NoFuse);
        await shop.Type("build", shop.At("jobs/a.wsk.yaml"));
        foreach (var file in Directory.GetFiles(shop.At("a")))
        {
            Assert.DoesNotContain(shop.Folder, System.Text.Encoding.Latin1.GetString(File.ReadAllBytes(file)), StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task Sheets_of_an_earlier_build_go_and_the_users_own_files_stay()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier);
        await shop.Type("build", "a.wsk.yaml", "-o", "x");
        var built = Directory.GetFiles(shop.At("x")).Select(Path.GetFileName).Order(StringComparer.Ordinal).ToArray();
        string[] mine = ["drawing-notes.svg", "drawing-2.svg.bak", "drawing.txt", "my-parts.csv", "notes.txt", "old/drawing-2.svg"];
        foreach (var name in mine.Concat(["drawing-2.svg", "drawing-2.png", "drawing-17.svg"]))
        {
            shop.With("x/" + name, "words");
        }

        var said = await shop.Type("build", "a.wsk.yaml", "-o", "x");
        Assert.Contains(
            "removed 3 files of an earlier build: drawing-17.svg, drawing-2.png, drawing-2.svg",
            said.Error,
            StringComparison.Ordinal);
        Assert.All(mine, m => Assert.Equal("words", shop.Read("x/" + m)));
        Assert.Equal(
            built.Concat(mine[..^1]).Order(StringComparer.Ordinal),
            Directory.GetFiles(shop.At("x")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task Where_nothing_can_be_drawn_the_old_drawing_and_papers_go_too()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier).With("b.wsk.yaml", Shop.UnknownGear).With("x/notes.txt", "mine");
        await shop.Type("build", "a.wsk.yaml", "-o", "x");
        var said = await shop.Type("build", "b.wsk.yaml", "-o", "x");
        Assert.Contains(
            "nothing is drawn: the spec cannot be understood yet; the drawing of an earlier build was removed\n",
            said.Error,
            StringComparison.Ordinal);
        Assert.Equal(
            ["findings.json", "findings.md", "notes.txt"],
            Directory.GetFiles(shop.At("x")).Select(Path.GetFileName).Order(StringComparer.Ordinal));
    }

    [Fact]
    public async Task In_a_folder_that_nothing_was_built_into_every_file_is_the_users()
    {
        using var shop = new Shop().With("b.wsk.yaml", Shop.UnknownGear).With("x/setup.md", "mine").With("x/parts.csv", "mine");
        await shop.Type("build", "b.wsk.yaml", "-o", "x");
        await shop.Type("build", "b.wsk.yaml", "-o", "x");
        Assert.Equal(("mine", "mine"), (shop.Read("x/setup.md"), shop.Read("x/parts.csv")));
    }

    [Fact]
    public async Task Every_file_that_a_build_writes_bears_a_name_that_is_known_as_ours()
    {
        using var shop = new Shop().With("a.wsk.yaml", Repository.Read("specs/two-amplifiers.wsk.yaml"))
            .With("parts/shop-parts.yaml", Repository.Read("specs/parts/shop-parts.yaml"));
        await shop.Type("build", "a.wsk.yaml", "-o", "x");
        Assert.All(
            Directory.GetFiles(shop.At("x")).Select(f => Path.GetFileName(f)),
            n => Assert.True(Outputs.GeneratedFileNames.Hold(n), n));
    }
}
