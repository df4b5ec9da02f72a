using System.CommandLine;
using WireSketch.Cli.Findings;
using WireSketch.Cli.Inputs;
using WireSketch.Diagnostics;
using WireSketch.Documents.Findings;
using WireSketch.Rules;
using WireSketch.Text;

namespace WireSketch.Cli.Commands;

/// <summary><c>check</c>: findings, and nothing is written.</summary>
internal static class CheckCommand
{
    private static readonly string[] Formats = ["text", "short", "json", "github", "sarif"];

    public static Command Make(CliContext surroundings, SharedOptions options)
    {
        var format = new Option<string>("--format", "-f")
        {
            Description =
                "text for people on standard error; the others for programs on standard output: short is a line each, github makes "
                + "annotations.",
            DefaultValueFactory = _ => "text",
        }.AcceptOnlyFromAmong(Formats);
        var command = new Command("check", "Reads and computes specs and says what is wrong with them. Writes nothing.")
        {
            options.Specs, format, options.FailOn, options.Roots, options.StdinName, options.Color, options.Quiet, options.Verbose,
        };
        command.SetAction((parse, stop) => Task.Run(() => Run(surroundings, options, parse, parse.GetValue(format)!, stop), stop));
        return command;
    }

    private static int Run(CliContext surroundings, SharedOptions options, ParseResult parse, string format, CancellationToken stop)
    {
        var session = new Session(surroundings, options, parse);
        var checkedSpecs = new List<(SpecInput Input, Compilation Result)>();
        using (var progress = session.Progress())
        {
            foreach (var input in session.Inputs)
            {
                stop.ThrowIfCancellationRequested();
                progress.Begin(input.Shown);
                checkedSpecs.Add((input, session.Compile(input)));
            }
        }

        var names = new Dictionary<SourceFile, string>(ReferenceEqualityComparer.Instance);
        foreach (var (input, result) in checkedSpecs)
        {
            foreach (var file in result.Findings.SelectMany(FilesOf).Append(input.File))
            {
                names.TryAdd(file, input.NameOf(file));
            }
        }

        var report = new FindingsReport(
            [.. checkedSpecs.Select(c => c.Input.Shown)],
            [.. checkedSpecs.SelectMany(c => c.Result.Findings)],
            f => names.GetValueOrDefault(f, f.Name))
        { Unread = [.. session.Unread] };
        if (format == "text")
        {
            surroundings.Error.Write(new FindingPrinter(session.Color, report.NameOf).Print(report.All));
        }
        else
        {
            surroundings.Out.Write(format switch
            {
                "short" => FindingLines.Short(report),
                "json" => FindingsJson.Write(report),
                "github" => FindingLines.GitHub(report),
                _ => Sarif.Write(report, RuleBook.Cards, ProgramVersion.Words),
            });
        }

        session.Summarize(report);
        return session.End(session.ExitCodeFor(report.All));
    }

    private static IEnumerable<SourceFile> FilesOf(Finding f) =>
        f.Notes.Select(n => n.At?.File)
            .OfType<SourceFile>()
            .Concat(f.Fixes.SelectMany(x => x.Edits).Select(e => e.At.File))
            .Prepend(f.At.File);
}
