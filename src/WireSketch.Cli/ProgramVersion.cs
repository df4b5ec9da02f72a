namespace WireSketch.Cli;

/// <summary>The program's own version.</summary>
internal static class ProgramVersion
{
    /// <summary>Major, minor and patch, such as 1.2.3.</summary>
    public static string Words { get; } = typeof(ProgramVersion).Assembly.GetName().Version?.ToString(3) ?? "0";
}
