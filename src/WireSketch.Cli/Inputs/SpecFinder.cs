using System.Text.RegularExpressions;
using Microsoft.Extensions.FileSystemGlobbing;
using WireSketch.Language;
using WireSketch.Text;

namespace WireSketch.Cli.Inputs;

/// <summary>Finds the specs that a command line names: files, folders, patterns, and <c>-</c> for standard input.</summary>
internal sealed class SpecFinder(Surroundings surroundings, string? stdinName)
{
    private const string Ending = ".wsk.yaml";

    /// <summary>All specs, in the order of the arguments, those of a folder or pattern in ordinal order; each once.</summary>
    /// <exception cref="Trouble">One cannot be found or read.</exception>
    public IReadOnlyList<SpecInput> Find(IReadOnlyList<string> arguments)
    {
        var found = new List<SpecInput>();
        var seen = new HashSet<string>(StringComparer.Ordinal);
        foreach (var argument in arguments)
        {
            if (argument == "-")
            {
                if (seen.Add("-"))
                {
                    found.Add(StandardInput());
                }

                continue;
            }

            foreach (var (path, searched) in Expand(argument))
            {
                if (seen.Add(surroundings.Full(path)) && Load(path, searched) is { } input)
                {
                    found.Add(input);
                }
            }
        }

        return found.Count > 0 ? found : throw new Trouble($"there is no spec in {string.Join(", ", arguments)}: specs end in {Ending}");
    }

    private SpecInput StandardInput()
    {
        var name = (stdinName ?? "(standard input)").Replace('\\', '/');
        try
        {
            var full = surroundings.Full(stdinName ?? "stdin.wsk.yaml");
            return new(new(stdinName is null ? name : Path.GetFileName(full), TextFile.Read(surroundings.In)), name, Path.GetDirectoryName(full)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Trouble($"standard input cannot be read: {Trouble.Of(e)}");
        }
    }

    private IEnumerable<(string Path, bool Searched)> Expand(string argument)
    {
        if (argument.Length == 0 || argument.Contains('\0', StringComparison.Ordinal))
        {
            throw new Trouble("a spec has no name");
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
            throw new Trouble($"{argument}: there is no such file or folder");
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
                .. matcher.GetResultsInFullPath(folder).Select(p => Path.GetRelativePath(folder, p).Replace('\\', '/')).Where(p => single.IsMatch(p))
                    .Order(StringComparer.Ordinal).Select(p => (prefix + p, true)),
            ];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Trouble($"{(prefix.Length == 0 ? "." : prefix)}: {Trouble.Of(e)}");
        }
    }

    /// <summary>The matcher knows no question mark: it looks for a star there, and this leaves out what has not exactly one character.</summary>
    private static Regex SingleCharacters(string pattern) => new(
        pattern.Contains('?', StringComparison.Ordinal)
            ? $"^{Regex.Escape(pattern).Replace(@"\*\*/", "(?:.*/)?", StringComparison.Ordinal).Replace(@"\*", "[^/]*", StringComparison.Ordinal).Replace(@"\?", "[^/]", StringComparison.Ordinal)}$"
            : "",
        RegexOptions.CultureInvariant | RegexOptions.NonBacktracking);

    /// <summary>Reads a spec; null for a shared file that a search has turned up.</summary>
    private SpecInput? Load(string path, bool searched)
    {
        var full = surroundings.Full(path);
        try
        {
            var file = new SourceFile(Path.GetFileName(full), TextFile.Read(full));
            return searched && SpecReader.IsShared(file) ? null : new(file, path.Replace('\\', '/'), Path.GetDirectoryName(full)!);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            throw new Trouble($"{path}: {Trouble.Of(e)}");
        }
    }
}
