using System.Diagnostics;

namespace WireSketch.Cli.Tests;

/// <summary>What becomes of words that cannot be written, and that no terminal gets signs which nobody asked for.</summary>
public sealed class OutputTests
{
    [Theory]
    [InlineData("explain")]
    [InlineData("--help")]
    [InlineData("schema")]
    [InlineData("check", "a.wsk.yaml", "--format", "json")]
    public async Task Standard_output_that_is_full_ends_with_2_and_a_sentence(params string[] words)
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.OneAmplifier);
        using var error = new StringWriter();
        Assert.Equal(2, await CommandLine.RunAsync(words, Around(shop, new FullWriter(), error)));
        Assert.Contains(
            "wiresketch: standard output cannot be written: there is no space left\n",
            error.ToString().ReplaceLineEndings("\n"),
            StringComparison.Ordinal);
        Assert.DoesNotContain("fault of the program", error.ToString(), StringComparison.Ordinal);
    }

    [Fact]
    public async Task Where_nothing_can_be_said_the_code_says_it()
    {
        using var shop = new Shop().With("a.wsk.yaml", Shop.NoFuse);
        Assert.Equal(2, await CommandLine.RunAsync(["explain"], Around(shop, new FullWriter(), new FullWriter())));
        Assert.Equal(2, await CommandLine.RunAsync(["check", "a.wsk.yaml"], Around(shop, new FullWriter(), new FullWriter())));
        Assert.Equal(2, await CommandLine.RunAsync(["check", "nothing"], Around(shop, new FullWriter(), new FullWriter())));
    }

    [Fact]
    public void Progress_needs_nothing_of_a_terminal_but_a_carriage_return_and_leaves_nothing_behind()
    {
        using var writer = new StringWriter();
        using (var progress = new Progress(writer, isShown: true, 2, TimeSpan.Zero))
        {
            progress.Begin("a-long-name.wsk.yaml");
            progress.Begin("b.wsk.yaml");
        }

        var said = writer.ToString();
        Assert.Contains("\r1 of 2: a-long-name.wsk.yaml\r2 of 2: b.wsk.yaml", said, StringComparison.Ordinal);
        Assert.All(said, c => Assert.True(c == '\r' || !char.IsControl(c)));
        Assert.Equal("", said.Split('\r')[^1]);
        Assert.True(said.Split('\r')[^2].Length >= "2 of 2: b.wsk.yaml".Length && string.IsNullOrWhiteSpace(said.Split('\r')[^2]));
    }

    /// <summary>On a real terminal, which script(1) makes.</summary>
    [Theory]
    [InlineData("check", "a.wsk.yaml")]
    [InlineData("explain", "supply/drop")]
    [InlineData("--help")]
    public async Task A_terminal_that_wants_no_color_gets_no_escape_at_all(params string[] words)
    {
        const string script = "/usr/bin/script";
        Assert.SkipUnless(File.Exists(script), "There is no script(1) that makes a terminal.");
        using var shop = new Shop().With("a.wsk.yaml", Shop.NoFuse);
        var start = new ProcessStartInfo(
            script,
            ["-qec", $"dotnet {typeof(CommandLine).Assembly.Location} {string.Join(' ', words)}", "/dev/null"])
        {
            WorkingDirectory = shop.Folder,
            RedirectStandardOutput = true,
            RedirectStandardInput = true,
        };
        start.Environment["NO_COLOR"] = "1";
        start.Environment["TERM"] = "xterm-256color";
        using var process = Process.Start(start)!;
        process.StandardInput.Close();
        var said = await process.StandardOutput.ReadToEndAsync(TestContext.Current.CancellationToken);
        Assert.True(said.Length > 100, said);
        Assert.DoesNotContain('\u001b', said);
    }

    private static CliContext Around(Shop shop, TextWriter output, TextWriter error) => new()
    {
        Out = output,
        Error = error,
        In = Stream.Null,
        OutIsTerminal = false,
        ErrorIsTerminal = false,
        Variable = _ => null,
        Folder = shop.Folder,
    };

    /// <summary>A device without any room, as /dev/full is one.</summary>
    private sealed class FullWriter : StringWriter
    {
        public override void Write(char value) => throw new IOException("No space left on device", 28);

        public override void Write(string? value) => throw new IOException("No space left on device", 28);

        public override void Write(char[] buffer, int index, int count) => throw new IOException("No space left on device", 28);

        public override void WriteLine(string? value) => throw new IOException("No space left on device", 28);
    }
}
