using Microsoft.Win32.SafeHandles;

namespace WireSketch.Cli;

/// <summary>Everything outside the program that a command may touch: streams, variables, the current folder.</summary>
internal sealed record CliContext
{
    /// <summary>Standard output.</summary>
    public required TextWriter Out { get; init; }

    /// <summary>Standard error.</summary>
    public required TextWriter Error { get; init; }

    /// <summary>Standard input.</summary>
    public required Stream In { get; init; }

    /// <summary>A person reads standard output.</summary>
    public required bool OutIsTerminal { get; init; }

    /// <summary>A person reads standard error.</summary>
    public required bool ErrorIsTerminal { get; init; }

    /// <summary>Gives an environment variable, or null.</summary>
    public required Func<string, string?> Variable { get; init; }

    /// <summary>The current folder, in full.</summary>
    public required string Folder { get; init; }

    public static CliContext OfProcess()
    {
        var text = new System.Text.UTF8Encoding(false);
        return new()
        {
            Out = new StreamWriter(Open(1, Console.OpenStandardOutput), text) { AutoFlush = true, NewLine = "\n" },
            Error = new StreamWriter(Open(2, Console.OpenStandardError), text) { AutoFlush = true, NewLine = "\n" },
            In = Console.OpenStandardInput(),
            OutIsTerminal = !Console.IsOutputRedirected,
            ErrorIsTerminal = !Console.IsErrorRedirected,
            Variable = Environment.GetEnvironmentVariable,
            Folder = Environment.CurrentDirectory,
        };
    }

    /// <summary>
    /// A stream of the process. Where standard output is a terminal, the console's own streams would first send it an escape sequence
    /// (the keypad mode of its terminfo entry), wanted or not; elsewhere they are right, since both may lead into one file.
    /// </summary>
    private static Stream Open(int descriptor, Func<Stream> console) => OperatingSystem.IsWindows() || Console.IsOutputRedirected
        ? console()
        : new FileStream(new SafeFileHandle(descriptor, ownsHandle: false), FileAccess.Write, bufferSize: 0);

    /// <summary>A path that the user gave, in full.</summary>
    public string Full(string path) => Path.GetFullPath(path, Folder);
}
