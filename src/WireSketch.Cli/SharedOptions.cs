using System.CommandLine;

namespace WireSketch.Cli;

/// <summary>Options that several commands have, each made once.</summary>
internal sealed class SharedOptions
{
    public Argument<string[]> Specs { get; } = new("specs")
    {
        Description =
            "Spec files, folders that are searched for *.wsk.yaml, patterns such as 'jobs/**/*.wsk.yaml', or - for standard input.",
        Arity = ArgumentArity.OneOrMore,
    };

    public Option<string> Color { get; } = new Option<string>("--color")
    {
        Description = "Colors: auto asks NO_COLOR, CLICOLOR_FORCE, TERM and whether a terminal is there.",
        DefaultValueFactory = _ => "auto",
    }.AcceptOnlyFromAmong("auto", "always", "never");

    public Option<bool> Quiet { get; } = new("--quiet", "-q") { Description = "Findings only: no summary, no list of files." };

    public Option<bool> Verbose { get; } = new("--verbose", "-v") { Description = "Also say what was read, and how long each step took." };

    public Option<string[]> Roots { get; } = new("--root")
    {
        Description = "A further folder in which files named under use: may lie; without it only the spec's own folder.",
        HelpName = "FOLDER",
        Arity = ArgumentArity.OneOrMore,
    };

    public Option<string?> StdinName { get; } = new("--stdin-name")
    {
        Description = "The name under which standard input is read.",
        HelpName = "FILE"
    };

    public Option<string> FailOn { get; } = new Option<string>("--fail-on")
    {
        Description = "The least finding for which the command ends with 1.",
        DefaultValueFactory = _ => "error",
    }.AcceptOnlyFromAmong("error", "warning", "advice", "never");
}
