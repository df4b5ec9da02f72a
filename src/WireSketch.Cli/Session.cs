using System.CommandLine;
using System.Diagnostics;
using System.Globalization;
using WireSketch.Cli.Inputs;
using WireSketch.Diagnostics;
using WireSketch.Documents.Findings;

namespace WireSketch.Cli;

/// <summary>What commands that read specs have in common: the specs, how loud to be, and what to end with.</summary>
internal sealed class Session
{
    private readonly CliContext surroundings;
    private readonly string[] roots;
    private readonly string failOn;

    /// <exception cref="UserException">No spec can be read, or a folder that was named is not there.</exception>
    public Session(CliContext surroundings, SharedOptions options, ParseResult parse)
    {
        this.surroundings = surroundings;
        Color = TerminalColor.For(parse.GetValue(options.Color)!, surroundings.ErrorIsTerminal, surroundings.Variable);
        IsQuiet = parse.GetValue(options.Quiet);
        IsVerbose = parse.GetValue(options.Verbose) && !IsQuiet;
        failOn = parse.GetValue(options.FailOn)!;
        roots = [.. (parse.GetValue(options.Roots) ?? []).Select(Root)];
        var found = new SpecFinder(surroundings, parse.GetValue(options.StdinName)).Find(parse.GetValue(options.Specs) ?? []);
        (Inputs, Unread) = (found.Specs, found.Unread);
    }

    public IReadOnlyList<SpecInput> Inputs { get; }

    /// <summary>A sentence for each spec that could not be read.</summary>
    public IReadOnlyList<string> Unread { get; }

    public TerminalColor Color { get; }

    public bool IsQuiet { get; }

    public bool IsVerbose { get; }

    public Progress Progress() => new(surroundings.Error, surroundings.ErrorIsTerminal && !IsQuiet, Inputs.Count, TimeSpan.FromSeconds(1));

    public Compilation Compile(SpecInput input) =>
        Timed($"{input.Shown}: read, computed and checked", () => Compiler.Compile(input.File, new DiskFiles(input.Folder, roots)));

    /// <summary>Does something and, if asked to be verbose, says how long it took.</summary>
    public T Timed<T>(string what, Func<T> work)
    {
        var start = Stopwatch.GetTimestamp();
        var result = work();
        if (IsVerbose)
        {
            surroundings.Error.WriteLine(string.Create(
                CultureInfo.InvariantCulture,
                $"{what} in {Stopwatch.GetElapsedTime(start).TotalMilliseconds:F0} ms"));
        }

        return result;
    }

    /// <summary>The closing line.</summary>
    public void Summarize(FindingsReport report)
    {
        if (IsQuiet)
        {
            return;
        }

        var specs = report.Specs is [var one] ? one : string.Create(CultureInfo.InvariantCulture, $"{report.Specs.Length} specs");
        var summary = report.Summary();
        surroundings.Error.WriteLine(
            $"{specs}: {(report.Errors > 0 ? Color.Error(summary) : report.Warnings > 0 ? Color.Warning(summary) : Color.Good(summary))}");
        if (report.All.FirstOrDefault(f => f.Blocks) is { } first)
        {
            surroundings.Error.WriteLine($"more about a finding: wiresketch explain {first.Rule}");
        }
    }

    /// <summary>Says which specs could not be read, and gives the code to end with.</summary>
    public int End(int code)
    {
        foreach (var sentence in Unread)
        {
            surroundings.Error.WriteLine($"wiresketch: {sentence}");
        }

        return Unread.Count > 0 ? ExitCode.WrongUse : code;
    }

    public int ExitCodeFor(IEnumerable<Finding> findings)
    {
        var least = failOn switch { "error" => Severity.Error, "warning" => Severity.Warning, _ => Severity.Advice };
        return failOn != "never" && findings.Any(f => f.AcceptedBecause is null && f.Severity >= least)
            ? ExitCode.Findings
            : ExitCode.Clean;
    }

    private string Root(string folder)
    {
        var full = surroundings.Full(folder);
        return Directory.Exists(full) ? full : throw new UserException($"--root {folder}: there is no such folder");
    }
}
