namespace WireSketch.Cli;

/// <summary>Everything outside the program that a command may touch: streams, variables, the current folder.</summary>
/// <param name="Out">Standard output.</param>
/// <param name="Error">Standard error.</param>
/// <param name="In">Standard input.</param>
/// <param name="OutIsTerminal">A person reads standard output.</param>
/// <param name="ErrorIsTerminal">A person reads standard error.</param>
/// <param name="Variable">Gives an environment variable, or null.</param>
/// <param name="Folder">The current folder, in full.</param>
internal sealed record Surroundings(
    TextWriter Out, TextWriter Error, Stream In, bool OutIsTerminal, bool ErrorIsTerminal, Func<string, string?> Variable, string Folder)
{
    public static Surroundings OfProcess()
    {
        var text = new System.Text.UTF8Encoding(false);
        return new(
            new StreamWriter(Console.OpenStandardOutput(), text) { AutoFlush = true, NewLine = "\n" },
            new StreamWriter(Console.OpenStandardError(), text) { AutoFlush = true, NewLine = "\n" },
            Console.OpenStandardInput(), !Console.IsOutputRedirected, !Console.IsErrorRedirected, Environment.GetEnvironmentVariable, Environment.CurrentDirectory);
    }

    /// <summary>A path that the user gave, in full.</summary>
    public string Full(string path) => Path.GetFullPath(path, Folder);
}
