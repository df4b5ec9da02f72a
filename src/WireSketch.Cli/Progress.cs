using System.Diagnostics;
using System.Globalization;

namespace WireSketch.Cli;

/// <summary>
/// Says how far a command is, on a terminal and only once it has taken a while. It goes back to the start of the line and writes over what
/// stands there, so that no terminal needs to understand more than a carriage return.
/// </summary>
/// <param name="writer">Where to.</param>
/// <param name="isShown">Whether anything is said at all.</param>
/// <param name="total">How many steps there are.</param>
/// <param name="patience">How long nothing is said.</param>
internal sealed class Progress(TextWriter writer, bool isShown, int total, TimeSpan patience) : IDisposable
{
    /// <summary>A line that wraps could not be written over.</summary>
    private const int Widest = 78;

    private readonly long start = Stopwatch.GetTimestamp();
    private int done;
    private int width;

    /// <summary>Names what is begun now.</summary>
    public void Begin(string what)
    {
        done++;
        if (isShown && Stopwatch.GetElapsedTime(start) >= patience)
        {
            var words = string.Create(CultureInfo.InvariantCulture, $"{done} of {total}: {what}");
            words = words.Length <= Widest ? words : words[..(Widest - 1)] + "…";
            writer.Write($"\r{words.PadRight(width)}");
            width = words.Length;
        }
    }

    /// <summary>Clears the line, so that something else can be written.</summary>
    public void Clear()
    {
        if (width > 0)
        {
            writer.Write($"\r{new string(' ', width)}\r");
            width = 0;
        }
    }

    public void Dispose() => Clear();
}
