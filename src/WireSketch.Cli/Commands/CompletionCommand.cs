using System.CommandLine;

namespace WireSketch.Cli.Commands;

/// <summary><c>completion</c>: a script that lets a shell complete commands, options and rules.</summary>
internal static class CompletionCommand
{
    private const string Bash = """
        # Add to ~/.bashrc:  eval "$(wiresketch completion bash)"
        _wiresketch() {
            local words
            words=$(wiresketch "[suggest:${COMP_POINT}]" "${COMP_LINE}" 2>/dev/null)
            COMPREPLY=($(compgen -W "$words" -- "${COMP_WORDS[COMP_CWORD]}"))
        }
        complete -o default -F _wiresketch wiresketch
        """;

    private const string Zsh = """
        # Add to ~/.zshrc, after compinit:  eval "$(wiresketch completion zsh)"
        _wiresketch() {
            local -a words
            words=(${(f)"$(wiresketch "[suggest:${CURSOR}]" "${BUFFER}" 2>/dev/null)"})
            compadd -a words
            _files
        }
        compdef _wiresketch wiresketch
        """;

    private const string Fish = """
        # Add to ~/.config/fish/config.fish:  wiresketch completion fish | source
        complete -c wiresketch -a '(wiresketch "[suggest:"(commandline -C)"]" (commandline -cp) 2>/dev/null)'
        """;

    private const string PowerShell = """
        # Add to $PROFILE:  wiresketch completion powershell | Out-String | Invoke-Expression
        Register-ArgumentCompleter -Native -CommandName wiresketch -ScriptBlock {
            param($wordToComplete, $commandAst, $cursorPosition)
            wiresketch "[suggest:$cursorPosition]" "$commandAst" | Where-Object { $_ -like "$wordToComplete*" } | ForEach-Object {
                [System.Management.Automation.CompletionResult]::new($_, $_, 'ParameterValue', $_)
            }
        }
        """;

    public static Command Make(CliContext surroundings)
    {
        var shell = new Argument<string>("shell")
        {
            Description = "bash, zsh, fish or powershell.",
            HelpName = "shell"
        }.AcceptOnlyFromAmong(
            "bash", "zsh", "fish", "powershell");
        var command = new Command(
            "completion",
            "Prints a script that completes wiresketch commands in a shell. Its first line says where it goes.") { shell };
        command.SetAction((parse, _) =>
        {
            var script = parse.GetValue(shell) switch { "bash" => Bash, "zsh" => Zsh, "fish" => Fish, _ => PowerShell };
            surroundings.Out.WriteLine(script.ReplaceLineEndings("\n"));
            return Task.FromResult(ExitCode.Clean);
        });
        return command;
    }
}
