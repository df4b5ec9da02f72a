namespace WireSketch.Cli;

/// <summary>Wrong use, or a file that cannot be read or written: said in one sentence, and the command ends with 2.</summary>
internal sealed class UserException(string sentence) : Exception(sentence)
{
    /// <summary>What went wrong with a file, in the user's words and without a path of the machine.</summary>
    public static string Of(Exception exception) => exception switch
    {
        FileNotFoundException => "there is no such file",
        DirectoryNotFoundException => "there is no such folder",
        UnauthorizedAccessException => "permission is denied",
        PathTooLongException => "the path is too long",
        IOException { Message: "it is a folder" } => "it is a folder",
        IOException { HResult: 28 } => "there is no space left",
        _ => "the system refuses: " + Reason(exception.Message),
    };

    /// <summary>Messages of the framework end with the path they concern.</summary>
    private static string Reason(string message)
    {
        var colon = message.IndexOf(" : '", StringComparison.Ordinal);
        return (colon < 0 ? message : message[..colon]).TrimEnd('.');
    }
}
