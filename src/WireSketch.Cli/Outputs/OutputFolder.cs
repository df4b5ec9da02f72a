using System.Globalization;
using WireSketch.Documents;

namespace WireSketch.Cli.Outputs;

/// <summary>
/// Puts finished files into a folder, so that a reader finds either the old one or the new one: each is written beside its
/// target and moved over it. A file that holds the same bytes already is left alone.
/// </summary>
/// <param name="shown">The folder as the user named it.</param>
/// <param name="full">The folder in full.</param>
internal sealed class OutputFolder(string shown, string full)
{
    /// <summary>
    /// Writes all that a build gives, and takes away what an earlier build left under our own names: sheets of two jobs must not lie in
    /// one folder.
    /// </summary>
    /// <exception cref="UserException">The folder or a file cannot be written.</exception>
    public WrittenFiles Replace(IReadOnlyList<Paper> papers, CancellationToken stop) => Write(papers, Stale(papers), stop);

    /// <summary>Writes the files. If one cannot be written, what was written beside its target is removed again.</summary>
    private WrittenFiles Write(IReadOnlyList<Paper> papers, IReadOnlyList<string> stale, CancellationToken stop)
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

            foreach (var name in stale)
            {
                current = $"{shown}/{name}";
                File.Delete(Path.Combine(full, name));
            }

            foreach (var (draft, target) in drafts)
            {
                current = $"{shown}/{Path.GetFileName(target)}";
                File.Move(draft, target, overwrite: true);
            }

            return new(drafts.Count, papers.Count - drafts.Count, stale);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserException($"{current} cannot be written: {UserException.Of(e)}");
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
    /// <exception cref="UserException">It cannot be written.</exception>
    public static void WriteOne(CliContext surroundings, string file, Paper paper, CancellationToken stop)
    {
        var full = surroundings.Full(file);
        var folder = Path.GetDirectoryName(file) is { Length: > 0 } f ? f.Replace('\\', '/') : ".";
        if (Directory.Exists(full))
        {
            throw new UserException($"{file} cannot be written: it is a folder");
        }

        var files = new OutputFolder(folder, Path.GetDirectoryName(full)!).Write([paper with { Name = Path.GetFileName(full) }], [], stop);
        surroundings.Error.WriteLine(files.Written == 1 ? $"wrote {file}" : $"{file} is the same already");
    }

    /// <summary>
    /// Files of our own names that are not of this build, the one by which a build is known last. Where no install was built yet, a file
    /// of such a name is the user's.
    /// </summary>
    private List<string> Stale(IReadOnlyList<Paper> papers)
    {
        try
        {
            return File.Exists(Path.Combine(full, GeneratedFileNames.OfEveryDrawing))
                ? [
                    .. Directory.EnumerateFiles(full)
                        .Select(f => Path.GetFileName(f))
                        .Where(GeneratedFileNames.Hold)
                        .Except(papers.Select(p => p.Name), StringComparer.Ordinal)
                        .OrderBy(n => n == GeneratedFileNames.OfEveryDrawing)
                        .ThenBy(n => n, StringComparer.Ordinal)
                ]
                : [];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserException($"{shown} cannot be read: {UserException.Of(e)}");
        }
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

/// <summary>What became of the files of a folder.</summary>
/// <param name="Written">How many were written.</param>
/// <param name="Same">How many were the same already.</param>
/// <param name="Removed">Names of those of an earlier build that were taken away.</param>
internal sealed record WrittenFiles(int Written, int Same, IReadOnlyList<string> Removed);
