namespace WireSketch.Cli.Tests.Commands;

public sealed class WrongUseTests
{
    [Theory]
    [InlineData("there is no command chek; did you mean check?", "chek", "a.wsk.yaml")]
    [InlineData("there is no option --formt; did you mean --format?", "check", "a.wsk.yaml", "--formt", "json")]
    [InlineData("there is no option --version", "check", "a.wsk.yaml", "--version")]
    [InlineData("nothing.wsk.yaml: there is no such file or folder", "check", "nothing.wsk.yaml")]
    [InlineData("there is no spec in empty: specs end in .wsk.yaml", "check", "empty")]
    [InlineData("there is no spec in *.nothing", "check", "*.nothing")]
    [InlineData("a spec has no name", "check", "")]
    [InlineData("--root nowhere: there is no such folder", "check", "a.wsk.yaml", "--root", "nowhere")]
    [InlineData("there is no rule supply/unfusd; did you mean supply/unfused?", "explain", "supply/unfusd")]
    [InlineData("a.wsk.yaml is there already; nothing was written", "new", "a.wsk.yaml")]
    [InlineData("two specs would be written to a", "build", "a.wsk.yaml", "again/a.wsk.yaml")]
    [InlineData("\"five\" is not a resistance", "hookups", "five")]
    [InlineData("9 ohm", "hookups", "9 ohm", "--power", "nonsense")]
    public async Task Wrong_use_ends_with_2_and_one_sentence(string sentence, params string[] words)
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier).With("again/a.wsk.yaml", Shop.OneAmplifier);
        Directory.CreateDirectory(shop.At("empty"));
        var said = await shop.Type(words);
        Assert.Equal(2, said.Code);
        Assert.Empty(said.Output);
        Assert.StartsWith("wiresketch: ", said.Error, StringComparison.Ordinal);
        Assert.Single(said.Error.TrimEnd('\n').Split('\n'));
        Assert.Contains(sentence == "9 ohm" ? "is no power at a load" : sentence, said.Error, StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("check")]
    [InlineData("check", "a.wsk.yaml", "--format", "xml")]
    [InlineData("check", "a.wsk.yaml", "--format")]
    [InlineData("completion", "tcsh")]
    [InlineData("hookups")]
    public async Task What_the_parser_refuses_ends_with_2_and_is_not_said_on_standard_output(params string[] words)
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier);
        var said = await shop.Type(words);
        Assert.Equal(2, said.Code);
        Assert.Empty(said.Output);
        Assert.Single(said.Error.TrimEnd('\n').Split('\n'));
    }

    [Fact]
    public async Task A_lone_pair_of_hyphens_ends_the_options()
    {
        using var shop = new Shop().With("--odd.wsk.yaml", Shop.OneAmplifier);
        Assert.Equal(0, (await shop.Type("check", "--", "--odd.wsk.yaml")).Code);
    }

    [Fact]
    public async Task Without_a_command_help_is_shown_and_that_is_no_fault()
    {
        using var shop = new Shop();
        var said = await shop.Type();
        Assert.Equal(0, said.Code);
        Assert.Contains("Exit codes:", said.Output, StringComparison.Ordinal);
        Assert.Empty(said.Error);
    }

    [Fact]
    public async Task A_word_that_looks_like_a_switch_of_another_system_is_a_file_name()
    {
        using var shop = new Shop();
        var said = await shop.Type("check", "/?");
        Assert.Equal(2, said.Code);
        Assert.DoesNotContain("Usage", said.Output, StringComparison.Ordinal);
    }

    [Fact]
    public async Task The_version_is_one_line()
    {
        using var shop = new Shop();
        Assert.Matches(@"\Awiresketch \d+\.\d+\.\d+\n\z", (await shop.Type("--version")).Output.ReplaceLineEndings("\n"));
    }
}
