namespace WireSketch.Cli.Tests;

public sealed class ColorTests
{
    // no-color.org: set and not empty; CLICOLOR_FORCE other than 0 (bixense.com/clicolors, from memory).
    [Theory]
    [InlineData("auto", true, "", "", "xterm", true)]
    [InlineData("auto", false, "", "", "xterm", false)]
    [InlineData("auto", true, "", "", "dumb", false)]
    [InlineData("auto", true, "1", "1", "xterm", false)]
    [InlineData("auto", false, "", "1", "xterm", true)]
    [InlineData("auto", false, "", "0", "xterm", false)]
    [InlineData("always", false, "1", "", "dumb", true)]
    [InlineData("never", true, "", "1", "xterm", false)]
    public async Task The_option_beats_the_variables_and_they_beat_the_terminal(
        string option, bool terminal, string noColor, string force, string term, bool colored)
    {
        using var shop = new Shop { IsTerminal = terminal }.With("b.wsk.yaml", Shop.UnknownGear)
            .WithVariable("NO_COLOR", noColor)
            .WithVariable("CLICOLOR_FORCE", force)
            .WithVariable("TERM", term);
        var said = await shop.Type("check", "b.wsk.yaml", "--color", option);
        Assert.Equal(colored, said.Error.Contains("\u001b[1;31merror[", StringComparison.Ordinal));
        Assert.Equal(colored, said.Error.Contains('\u001b', StringComparison.Ordinal));
    }
}
