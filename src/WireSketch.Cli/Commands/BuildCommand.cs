using System.CommandLine;
using System.Globalization;
using WireSketch.Cli.Findings;
using WireSketch.Cli.Inputs;
using WireSketch.Cli.Outputs;
using WireSketch.Documents;
using WireSketch.Drawing.Sheets;
using WireSketch.Language;

namespace WireSketch.Cli.Commands;

/// <summary><c>build</c>: findings, the drawing, the lists and the papers.</summary>
internal static class BuildCommand
{
    public static Command Make(CliContext surroundings, SharedOptions options)
    {
        var folder = new Option<string?>("--output", "-o")
        {
            Description =
                "The folder to write to; with several specs, one folder for each inside it. Otherwise a folder in the current one, "
                + "named as the spec.",
            HelpName = "FOLDER",
        };
        var state = new Option<string>("--state")
        {
            Description = "The state whose volts and amps the drawing shows.",
            DefaultValueFactory = _ => SystemStates.WordOf(SystemState.FullOutput),
        }.AcceptOnlyFromAmong([.. SystemStates.Words.All]);
        var audience = new Option<string>("--for")
        {
            Description = "technician: everything; customer: what is where and what it does, in plain words.",
            DefaultValueFactory = _ => "technician",
        }.AcceptOnlyFromAmong("technician", "customer");
        var heat = new Option<string?>("--heat")
        {
            Description =
                "Colors supply and ground wires by the volts lost in each run, or by its current over what the conductor may carry.",
        }.AcceptOnlyFromAmong("drop", "load");
        var tint = new Option<string>("--tint")
        {
            Description = "print: dark on white; dark: light on dark, for screens.",
            DefaultValueFactory = _ => "print",
        }.AcceptOnlyFromAmong("print", "dark");
        var paper = new Option<string?>("--paper")
        {
            Description = "The size of the sheets; otherwise as the spec's settings say, else letter."
        }.AcceptOnlyFromAmong([.. WireSketch.Language.SheetSizes.Words.All]);
        var upright = new Option<bool?>("--upright")
        {
            Description = "Whether sheets stand upright: true or false; otherwise as the spec's settings say."
        };
        var command = new Command(
            "build",
            "Checks specs and writes their drawings, lists and papers. A spec with errors is drawn too, if it can be, and stamped.")
        {
            options.Specs, folder, state, audience, heat, tint, paper, upright, options.FailOn, options.Roots, options.StdinName,
            options.Color, options.Quiet, options.Verbose,
        };
        command.SetAction((parse, stop) =>
        {
            var drawing = new DrawingOptions
            {
                State = SystemStates.Of(parse.GetValue(state)!)!.Value,
                Audience = parse.GetValue(audience) == "customer" ? Audience.Customer : Audience.Technician,
                Heat = parse.GetValue(heat) switch { "drop" => LoadColoring.Drop, "load" => LoadColoring.Load, _ => LoadColoring.None },
                Theme = parse.GetValue(tint) == "dark" ? Theme.Dark : Theme.Print,
                Paper = parse.GetValue(paper) is { } size ? WireSketch.Language.SheetSizes.Words.Find(size) : null,
                Upright = parse.GetValue(upright),
            };
            return Task.Run(() => Run(surroundings, options, parse, parse.GetValue(folder), drawing, stop), stop);
        });
        return command;
    }

    private static int Run(
        CliContext surroundings, SharedOptions options, ParseResult parse, string? output, DrawingOptions drawing, CancellationToken stop)
    {
        var session = new Session(surroundings, options, parse);
        var targets = Targets(session.Inputs, output);
        var code = ExitCode.Clean;
        using var progress = session.Progress();
        foreach (var (input, target) in session.Inputs.Zip(targets))
        {
            stop.ThrowIfCancellationRequested();
            progress.Begin(input.Shown);
            var result = session.Compile(input);
            var papers = session.Timed($"{input.Shown}: drawn and listed", () => BuildPapers.Of(result, drawing, stop));
            progress.Clear();
            surroundings.Error.Write(new FindingPrinter(session.Color, input.NameOf).Print(result.Findings));
            var files = new OutputFolder(target, surroundings.Full(target)).Replace(papers, stop);
            session.Summarize(new([input.Shown], result.Findings, input.NameOf));
            if (!session.IsQuiet)
            {
                Say(surroundings, session, target, papers, files, result);
            }

            code = Math.Max(code, session.ExitCodeFor(result.Findings));
        }

        return session.End(code);
    }

    private static void Say(
        CliContext surroundings, Session session, string target, IReadOnlyList<Paper> papers, WrittenFiles files, Compilation result)
    {
        var unchanged = files.Same == 0 ? "" : string.Create(CultureInfo.InvariantCulture, $", {files.Same} unchanged");
        surroundings.Error.WriteLine(string.Create(CultureInfo.InvariantCulture, $"wrote {target}/: {Count(files.Written)}{unchanged}"));
        if (session.IsVerbose || papers.Count <= 2)
        {
            foreach (var paper in papers)
            {
                surroundings.Error.WriteLine(string.Create(
                    CultureInfo.InvariantCulture,
                    $"  {target}/{paper.Name} ({paper.Bytes.Length} bytes)"));
            }
        }
        else
        {
            surroundings.Error.WriteLine("  " + string.Join(", ", papers.Select(p => p.Name)));
        }

        if (files.Removed.Count > 0)
        {
            surroundings.Error.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"  removed {Count(files.Removed.Count)} of an earlier build: {string.Join(", ", files.Removed)}"));
        }

        if (result.Install is null)
        {
            surroundings.Error.WriteLine("nothing is drawn: the spec cannot be understood yet"
                + (files.Removed.Any(GeneratedFileNames.IsDrawing) ? "; the drawing of an earlier build was removed" : ""));
        }
        else if (result.Findings.Any(f => f.Blocks))
        {
            surroundings.Error.WriteLine("the drawing is stamped NOT FOR INSTALLATION until the errors are mended or accepted");
        }
    }

    private static string Count(int files) => files == 1 ? "1 file" : string.Create(CultureInfo.InvariantCulture, $"{files} files");

    private static List<string> Targets(IReadOnlyList<SpecInput> inputs, string? output)
    {
        if (output is { Length: 0 })
        {
            throw new UserException("--output has no folder");
        }

        var root = output?.Replace('\\', '/').TrimEnd('/');
        var targets = inputs.Select(i => root is null ? i.Stem : inputs.Count == 1 ? root.Length == 0 ? "/" : root : $"{root}/{i.Stem}")
            .ToList();
        var twice = targets.GroupBy(t => t, StringComparer.OrdinalIgnoreCase).FirstOrDefault(g => g.Count() > 1);
        return twice is null
            ? targets
            : throw new UserException($"two specs would be written to {twice.Key}; build them one by one, each with its own --output");
    }
}
