namespace WireSketch.Cli;

/// <summary>What the command gives back to the shell.</summary>
internal static class ExitCode
{
    /// <summary>No error in any spec.</summary>
    public const int Clean = 0;

    /// <summary>An error in a spec that nobody has accepted.</summary>
    public const int Findings = 1;

    /// <summary>Wrong use, or a file that cannot be read or written.</summary>
    public const int WrongUse = 2;

    /// <summary>A fault of the program.</summary>
    public const int InternalError = 3;

    /// <summary>Interrupted by the user.</summary>
    public const int Interrupted = 130;
}
