using WireSketch.Rules;
using WireSketch.Testing;

namespace WireSketch.Cli.Tests.Commands;

public sealed class OtherCommandsTests
{
    [Fact]
    public async Task The_new_spec_is_clean()
    {
        using var shop = new Shop();
        Assert.Equal(0, (await shop.Type("new")).Code);
        var said = await shop.Type("check", "install.wsk.yaml", "--fail-on", "advice");
        Assert.Equal(0, said.Code);
        Assert.Equal("install.wsk.yaml: nothing to report\n", said.Error);
        Assert.DoesNotContain("\u001b", shop.Read("install.wsk.yaml"), StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_new_spec_can_go_to_standard_output()
    {
        using var shop = new Shop();
        var said = await shop.Type("new", "-");
        Assert.StartsWith("# ", said.Output, StringComparison.Ordinal);
        Assert.Empty(Directory.GetFiles(shop.Folder));
    }

    [Fact]
    public async Task Every_rule_is_listed_and_explained()
    {
        using var shop = new Shop();
        var list = (await shop.Type("explain")).Output;
        Assert.NotEmpty(RuleBook.Cards);
        foreach (var card in RuleBook.Cards)
        {
            Assert.Contains(card.Id, list, StringComparison.Ordinal);
            var text = (await shop.Type("explain", card.Id)).Output;
            Assert.Contains(card.Title, text, StringComparison.Ordinal);
            Assert.Contains("Basis: ", text, StringComparison.Ordinal);
        }
    }

    [Fact]
    public async Task A_former_id_is_explained_under_the_one_of_today()
    {
        using var shop = new Shop();
        Assert.StartsWith(
            "supply/starved is called supply/insufficient now.\n\nsupply/insufficient (error)\n",
            (await shop.Type("explain", "supply/starved")).Output,
            StringComparison.Ordinal);
    }

    [Fact]
    public async Task Every_finding_of_the_language_is_explained()
    {
        var pattern = new System.Text.RegularExpressions.Regex("\"(spec/[a-z-]+)\"");
        var ids = Directory.GetFiles(Path.Combine(Repository.Root, "src/WireSketch"), "*.cs", SearchOption.AllDirectories)
            .SelectMany(f => pattern.Matches(File.ReadAllText(f)).Select(m => m.Groups[1].Value)).ToHashSet(StringComparer.Ordinal);
        Assert.Contains("spec/syntax", ids);
        using var shop = new Shop();
        foreach (var id in ids)
        {
            Assert.Equal(0, (await shop.Type("explain", id)).Code);
        }

    }

    [Fact]
    public async Task The_schema_is_the_one_that_is_shipped()
    {
        using var shop = new Shop();
        Assert.Equal(Repository.Read("specs/reference/wiresketch.schema.json"), (await shop.Type("schema")).Output);
        Assert.Equal(0, (await shop.Type("schema", "-o", "s.json")).Code);
        Assert.Equal(Repository.Read("specs/reference/wiresketch.schema.json"), shop.Read("s.json"));
    }

    [Theory]
    [InlineData("bash", "complete -o default -F _wiresketch wiresketch")]
    [InlineData("zsh", "compdef _wiresketch wiresketch")]
    [InlineData("fish", "complete -c wiresketch")]
    [InlineData("powershell", "Register-ArgumentCompleter")]
    public async Task Each_shell_gets_its_script(string shell, string line)
    {
        using var shop = new Shop();
        Assert.Contains(line, (await shop.Type("completion", shell)).Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task Completion_suggests_commands()
    {
        using var shop = new Shop();
        Assert.Contains("check", (await shop.Type("[suggest:13]", "wiresketch ch")).Output, StringComparison.Ordinal);
    }

    // Two coils of 4 ohm: 8 ohm in series, 2 ohm in parallel (Ohm's law); I²R shares are even.
    [Fact]
    public async Task Hookups_of_two_coils_are_series_and_parallel_and_the_best_comes_first()
    {
        using var shop = new Shop();
        var lines = (await shop.Type(
            "hookups", "2 x 4 ohm", "--power", "4 ohm: 250 "
                + "W", "--power", "2 ohm: 400 W", "--minimum", "2 ohm", "--handles", "200 W")).Output
            .TrimEnd('\n')
            .Split('\n');
        Assert.Equal(3, lines.Length);
        Assert.Matches(@"^4 \| 4 +2 ohm +400 W +200 W in a coil +best$", lines[1]);
        Assert.Matches(@"^4 \+ 4 +8 ohm ", lines[2]);
    }
}
