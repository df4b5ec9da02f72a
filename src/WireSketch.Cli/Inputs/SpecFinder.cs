using System.Text.RegularExpressions;
using Microsoft.Extensions.FileSystemGlobbing;
using WireSketch.Language;
using WireSketch.Text;

namespace WireSketch.Cli.Inputs;

/// <summary>The specs that a command line names.</summary>
/// <param name="Specs">Those that could be read, in the order of the arguments, those of a folder or pattern in ordinal order; each
/// once.</param>
/// <param name="Unread">A sentence for each that cannot be found or read.</param>
internal sealed record FoundSpecs(IReadOnlyList<SpecInput> Specs, IReadOnlyList<string> Unread);

/// <summary>Finds the specs that a command line names: files, folders, patterns, and <c>-</c> for standard input.</summary>
internal sealed class SpecFinder(CliContext surroundings, string? stdinName)
{
    private const string Ending = ".wsk.yaml";

    private readonly List<SpecInput> found = [];
    private readonly List<string> unread = [];
    private readonly HashSet<string> seen = new(StringComparer.Ordinal);

    /// <summary>Finds and reads them all; one that cannot be read keeps nobody from judging the others.</summary>
    /// <exception cref="UserException">There is none that can be read.</exception>
    public FoundSpecs Find(IReadOnlyList<string> arguments)
    {
        foreach (var argument in arguments)
        {
            Try(() => Take(argument));
        }

        return found.Count > 0 ? new(found, unread)
            : throw new UserException(unread.Count > 0
                ? string.Join("; ", unread)
                : $"there is no spec in {string.Join(", ", arguments)}: specs end in {Ending}");
    }

    private void Take(string argument)
    {
        if (argument == "-")
        {
            if (seen.Add("-"))
            {
                found.Add(StandardInput());
            }

            return;
        }

        foreach (var (path, searched) in Expand(argument).Where(e => seen.Add(surroundings.Full(e.Path))))
        {
            Try(() => found.AddRange(Load(path, searched) is { } input ? [input] : []));
        }
    }

    private void Try(Action read)
    {
        try
        {
            read();
        }
        catch (UserException trouble)
        {
            unread.Add(trouble.Message);
        }
    }

    private SpecInput StandardInput()
    {
        var name = (stdinName ?? "(standard input)").Replace('\\', '/');
        try
        {
            var full = surroundings.Full(stdinName ?? "stdin.wsk.yaml");
            return new(
                new(stdinName is null ? name : Path.GetFileName(full), TextFile.Read(surroundings.In)),
                name,
                Path.GetDirectoryName(full)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserException($"standard input cannot be read: {UserException.Of(e)}");
        }
    }

    private IEnumerable<(string Path, bool Searched)> Expand(string argument)
    {
        if (argument.Length == 0 || argument.Contains('\0', StringComparison.Ordinal))
        {
            throw new UserException("a spec has no name");
        }

        var full = surroundings.Full(argument);
        if (File.Exists(full))
        {
            return [(argument, false)];
        }

        if (Directory.Exists(full))
        {
            var folder = argument.TrimEnd('/', '\\');
            return Match(full, "**/*" + Ending, folder is "." or "" ? "" : folder + "/");
        }

        if (argument.AsSpan().IndexOfAny('*', '?') < 0)
        {
            throw new UserException($"{argument}: there is no such file or folder");
        }

        // The part before the first star is a folder; the rest is the pattern.
        var slashed = argument.Replace('\\', '/');
        var cut = slashed.LastIndexOf('/', slashed.AsSpan().IndexOfAny('*', '?')) + 1;
        return Match(surroundings.Full(cut == 0 ? "." : slashed[..cut]), slashed[cut..], slashed[..cut]);
    }

    private static IEnumerable<(string Path, bool Searched)> Match(string folder, string pattern, string prefix)
    {
        if (!Directory.Exists(folder))
        {
            return [];
        }

        try
        {
            var matcher = new Matcher(StringComparison.Ordinal);
            matcher.AddInclude(pattern.Replace('?', '*'));
            var single = SingleCharacters(pattern);
            return
            [
                .. matcher.GetResultsInFullPath(folder)
                    .Select(p => Path.GetRelativePath(folder, p).Replace('\\', '/'))
                    .Where(p => single.IsMatch(p))
                    .Order(StringComparer.Ordinal).Select(p => (prefix + p, true)),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserException($"{(prefix.Length == 0 ? "." : prefix)}: {UserException.Of(e)}");
        }
    }

    /// <summary>
    /// The matcher knows no question mark: it looks for a star there, and this leaves out what has not exactly one character.
    /// </summary>
    private static Regex SingleCharacters(string pattern) => new(
        pattern.Contains('?', StringComparison.Ordinal)
            ? "^" + Regex.Escape(pattern)
                .Replace(@"\*\*/", "(?:.*/)?", StringComparison.Ordinal)
                .Replace(@"\*", "[^/]*", StringComparison.Ordinal)
                .Replace(@"\?", "[^/]", StringComparison.Ordinal) + "$"
            : "",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking);

    /// <summary>Reads a spec; null for a shared file that a search has turned up.</summary>
    private SpecInput? Load(string path, bool searched)
    {
        var full = surroundings.Full(path);
        try
        {
            // What a search turns up is not opened where it has no length: it may be a pipe, and nobody may ever write to it.
            var file = new SourceFile(Path.GetFileName(full), searched && new FileInfo(full).Length == 0 ? "" : TextFile.Read(full));
            return searched && SpecReader.IsShared(file) ? null : new(file, path.Replace('\\', '/'), Path.GetDirectoryName(full)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new UserException($"{path}: {UserException.Of(e)}");
        }
    }
}
