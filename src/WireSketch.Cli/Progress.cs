using System.Diagnostics;
using System.Globalization;

namespace WireSketch.Cli;

/// <summary>Says how far a command is, on a terminal and only once it has taken a second.</summary>
internal sealed class Progress(TextWriter writer, bool isShown, int total) : IDisposable
{
    private static readonly TimeSpan Patience = TimeSpan.FromSeconds(1);

    private readonly long start = Stopwatch.GetTimestamp();
    private int done;
    private bool hasWritten;

    /// <summary>Names what is begun now.</summary>
    public void Begin(string what)
    {
        done++;
        if (isShown && Stopwatch.GetElapsedTime(start) > Patience)
        {
            hasWritten = true;
            writer.Write(string.Create(CultureInfo.InvariantCulture, $"\r\u001b[K{done} of {total}: {what}"));
        }
    }

    /// <summary>Clears the line, so that something else can be written.</summary>
    public void Clear()
    {
        if (hasWritten)
        {
            writer.Write("\r\u001b[K");
            hasWritten = false;
        }
    }

    public void Dispose() => Clear();
}
