using System.CommandLine;
using System.CommandLine.Help;
using System.CommandLine.Invocation;
using System.CommandLine.Parsing;
using WireSketch.Cli.Commands;
using WireSketch.Text;

namespace WireSketch.Cli;

/// <summary>The command line as a whole: which commands there are, and what becomes of wrong use and of our own faults.</summary>
internal static class CommandLine
{
    /// <summary>Runs a command and gives its exit code. Nothing that the user does ends in a stack trace.</summary>
    public static async Task<int> RunAsync(string[] args, CliContext surroundings)
    {
        try
        {
            return await InvokeAsync(args, surroundings);
        }
        catch (UserException trouble)
        {
            Say(surroundings, trouble.Message);
            return ExitCode.WrongUse;
        }
        catch (OperationCanceledException)
        {
            return ExitCode.Interrupted;
        }
        catch (Exception refusal) when (refusal is IOException or UnauthorizedAccessException)
        {
            // Files are read and written elsewhere and reported there: this is one of our own streams.
            Say(surroundings, $"standard output cannot be written: {UserException.Of(refusal)}");
            return ExitCode.WrongUse;
        }
        catch (Exception fault)
        {
            Say(
                surroundings,
                $"this is a fault of the program, not of your spec: {fault.GetType().Name}: {fault.Message.ReplaceLineEndings(" ")}");
            Say(surroundings, $"please report it with the spec and this line: wiresketch {ProgramVersion.Words}, {Where(fault)}");
            return ExitCode.InternalError;
        }
    }

    internal static RootCommand Root(CliContext surroundings)
    {
        var options = new SharedOptions();
        var root = new RootCommand(
            "Checks a wiring spec of a vehicle audio or electrical system, computes it, and draws it with its lists and papers.")
        {
            NewCommand.Make(surroundings),
            CheckCommand.Make(surroundings, options),
            BuildCommand.Make(surroundings, options),
            ExplainCommand.Make(surroundings),
            HookupsCommand.Make(surroundings), SchemaCommand.Make(surroundings), CompletionCommand.Make(surroundings),
        };
        root.SetAction((parse, _) => Task.FromResult(new HelpWithExamples().Invoke(parse)));
        root.Options.Remove(root.Options.OfType<HelpOption>().Single());
        root.Options.Add(new HelpOption("--help", "-h") { Action = new HelpWithExamples() });
        root.Options.OfType<VersionOption>().Single().Action = new ShowVersion();
        return root;
    }

    private static async Task<int> InvokeAsync(string[] args, CliContext surroundings)
    {
        var root = Root(surroundings);
        var parsed = root.Parse(args, new ParserConfiguration { ResponseFileTokenReplacer = null });
        if (Stray(parsed) is { } stray)
        {
            var options = parsed.CommandResult.Command.Options.Concat(root.Options)
                .SelectMany(o => o.Aliases.Prepend(o.Name))
                .Where(n => n.StartsWith("--", StringComparison.Ordinal));
            throw new UserException($"there is no option {stray}{Meant(stray, options)}");
        }

        if (parsed.Action is ParseErrorAction)
        {
            throw new UserException(WrongUse(parsed, root));
        }

        return await parsed.InvokeAsync(new InvocationConfiguration
        {
            Output = surroundings.Out,
            Error = surroundings.Error,
            EnableDefaultExceptionHandler = false,
            ProcessTerminationTimeout = TimeSpan.FromSeconds(2),
        });
    }

    private static string WrongUse(ParseResult parsed, RootCommand root)
    {
        if (parsed.CommandResult.Command == root && parsed.UnmatchedTokens is [var word, ..])
        {
            return $"there is no command {word}{Meant(word, root.Subcommands.Select(c => c.Name))}";
        }

        return $"{parsed.Errors[0].Message.Trim().ReplaceLineEndings(" ")} See wiresketch "
            + $"{(parsed.CommandResult.Command == root ? "" : parsed.CommandResult.Command.Name + " ")}--help.";
    }

    private static string Meant(string word, IEnumerable<string> names) =>
        Nearest.To(word, names) is { } near ? $"; did you mean {near}?" : "; see wiresketch --help";

    /// <summary>An argument of many values swallows a mistyped option; a lone <c>--</c> frees what follows it.</summary>
    private static string? Stray(ParseResult parsed)
    {
        var free = parsed.Tokens.SkipWhile(t => t.Type != TokenType.DoubleDash).Skip(1).Count();
        return parsed.CommandResult.Children.OfType<ArgumentResult>()
            .SelectMany(a => a.Tokens.SkipLast(free))
            .Concat(parsed.UnmatchedTokens.SkipLast(free).Select(t => new Token(t, TokenType.Argument, null!)))
            .Select(t => t.Value).FirstOrDefault(v => v.Length > 1 && v[0] == '-');
    }

    private static void Say(CliContext surroundings, string sentence)
    {
        try
        {
            surroundings.Error.WriteLine($"wiresketch: {sentence}");
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // Nobody can be told any more; the exit code says it.
        }
    }

    /// <summary>The method in which a fault arose: enough to find it, and nothing of the machine.</summary>
    private static string Where(Exception fault) =>
        fault.StackTrace?.Split('\n').Select(l => l.Trim())
            .FirstOrDefault(l => l.Contains("WireSketch.", StringComparison.Ordinal)) is { } frame
            ? frame.Split('(')[0].Replace("at ", "in ", StringComparison.Ordinal)
            : "place unknown";

    private sealed class ShowVersion : SynchronousCommandLineAction
    {
        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            parseResult.InvocationConfiguration.Output.WriteLine($"wiresketch {ProgramVersion.Words}");
            return ExitCode.Clean;
        }
    }

    private sealed class HelpWithExamples : SynchronousCommandLineAction
    {
        private const int Width = 110;

        private const string More = """
            Examples:
              wiresketch new bass-upgrade.wsk.yaml         a commented spec to begin with
              wiresketch build bass-upgrade.wsk.yaml       the drawing, the lists and the papers, in the folder bass-upgrade
              wiresketch check jobs/ --format short        findings of every spec in a folder, a line each
              wiresketch explain supply/fuse-too-far       why a rule matters, with an example

            Exit codes:
              0    no error in any spec
              1    an error that nobody has accepted (or what --fail-on names)
              2    wrong use, or a file that cannot be read or written
              3    a fault of the program
              130  interrupted

            It uses no network and sends nothing anywhere.
            """;

        public override bool ClearsParseErrors => true;

        public override int Invoke(ParseResult parseResult)
        {
            var code = new HelpAction { MaxWidth = Width }.Invoke(parseResult);
            if (parseResult.CommandResult.Command is RootCommand)
            {
                parseResult.InvocationConfiguration.Output.WriteLine(More);
            }

            return code;
        }
    }
}
