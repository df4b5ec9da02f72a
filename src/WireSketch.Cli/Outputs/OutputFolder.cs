using System.Globalization;
using WireSketch.Papers;

namespace WireSketch.Cli.Outputs;

/// <summary>
/// Puts finished files into a folder, so that a reader finds either the old one or the new one: each is written beside its
/// target and moved over it. A file that holds the same bytes already is left alone.
/// </summary>
internal sealed class OutputFolder(string shown, string full)
{
    /// <summary>Writes the files. If one cannot be written, what was written beside its target is removed again.</summary>
    /// <returns>How many were written, and how many were the same already.</returns>
    /// <exception cref="Trouble">The folder or a file cannot be written.</exception>
    public (int Written, int Same) Write(IReadOnlyList<Paper> papers, CancellationToken stop)
    {
        var drafts = new List<(string Draft, string Target)>();
        var current = shown;
        try
        {
            Directory.CreateDirectory(full);
            foreach (var paper in papers)
            {
                stop.ThrowIfCancellationRequested();
                current = $"{shown}/{paper.Name}";
                var target = Path.Combine(full, paper.Name);
                if (!IsSame(target, paper.Bytes.Span))
                {
                    drafts.Add((Draft(target, paper.Bytes.Span), target));
                }
            }

            foreach (var (draft, target) in drafts)
            {
                current = $"{shown}/{Path.GetFileName(target)}";
                File.Move(draft, target, overwrite: true);
            }

            return (drafts.Count, papers.Count - drafts.Count);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Trouble($"{current} cannot be written: {Trouble.Of(e)}");
        }
        finally
        {
            foreach (var (draft, _) in drafts)
            {
                Discard(draft);
            }
        }
    }

    /// <summary>Writes a single file and says so.</summary>
    /// <exception cref="Trouble">It cannot be written.</exception>
    public static void WriteOne(Surroundings surroundings, string file, Paper paper, CancellationToken stop)
    {
        var full = surroundings.Full(file);
        var folder = Path.GetDirectoryName(file) is { Length: > 0 } f ? f.Replace('\\', '/') : ".";
        if (Directory.Exists(full))
        {
            throw new Trouble($"{file} cannot be written: it is a folder");
        }

        var (written, _) = new OutputFolder(folder, Path.GetDirectoryName(full)!).Write([paper with { Name = Path.GetFileName(full) }], stop);
        surroundings.Error.WriteLine(written == 1 ? $"wrote {file}" : $"{file} is the same already");
    }

    private static bool IsSame(string target, ReadOnlySpan<byte> bytes)
    {
        var info = new FileInfo(target);
        return info.Exists && info.Length == bytes.Length && File.ReadAllBytes(target).AsSpan().SequenceEqual(bytes);
    }

    private static string Draft(string target, ReadOnlySpan<byte> bytes)
    {
        var draft = string.Create(CultureInfo.InvariantCulture, $"{target}.{Environment.ProcessId}.part");
        try
        {
            File.WriteAllBytes(draft, bytes);
            return draft;
        }
        catch
        {
            Discard(draft);
            throw;
        }
    }

    private static void Discard(string draft)
    {
        try
        {
            File.Delete(draft);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // What cannot be removed is named .part; the trouble that led here is reported anyway.
        }
    }
}
