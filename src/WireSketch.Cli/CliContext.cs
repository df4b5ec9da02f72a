using Microsoft.Win32.SafeHandles;

namespace WireSketch.Cli;

/// <summary>Everything outside the program that a command may touch: streams, variables, the current folder.</summary>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
/// <param name="In">Standard input.</param>
/// <param name="OutIsTerminal">A person reads standard output.</param>
/// <param name="ErrorIsTerminal">A person reads standard error.</param>
/// <param name="Variable">Gives an environment variable, or null.</param>
/// <param name="Folder">The current folder, in full.</param>
internal sealed record CliContext(
    TextWriter Out, TextWriter Error, Stream In, bool OutIsTerminal, bool ErrorIsTerminal, Func<string, string?> Variable, string Folder)
{
    public static CliContext OfProcess()
    {
        var text = new System.Text.UTF8Encoding(false);
        return new(
            new StreamWriter(Open(1, Console.OpenStandardOutput), text) { AutoFlush = true, NewLine = "\n" },
            new StreamWriter(Open(2, Console.OpenStandardError), text) { AutoFlush = true, NewLine = "\n" },
            Console.OpenStandardInput(),
            !Console.IsOutputRedirected,
            !Console.IsErrorRedirected,
            Environment.GetEnvironmentVariable,
            Environment.CurrentDirectory);
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
