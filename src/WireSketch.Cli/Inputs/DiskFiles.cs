using WireSketch.Text;

namespace WireSketch.Cli.Inputs;

/// <summary>
/// Reads what a spec names under <c>use</c>: files inside the folder that holds the spec, or inside a folder that the user named
/// on the command line. Nothing else on the machine, and nothing from a network, can be reached by what a spec says.
/// </summary>
/// <param name="folder">The spec's folder, in full.</param>
/// <param name="allowed">Further folders, in full.</param>
internal sealed class DiskFiles(string folder, IReadOnlyList<string> allowed) : ISpecFiles
{
    private readonly string[] roots = [.. allowed.Prepend(folder).Select(Resolve)];

    public SourceFile? Read(SourceFile from, string path, out string why)
    {
        if (path.Contains("://", StringComparison.Ordinal)
            || path.StartsWith("\\\\", StringComparison.Ordinal)
            || path.StartsWith("//", StringComparison.Ordinal))
        {
            why = "it is an address on a network; only files beside the spec may be used";
            return null;
        }

        if (path.Length == 0
            || path.Contains('\0', StringComparison.Ordinal)
            || Path.IsPathRooted(path)
            || path.Contains(':', StringComparison.Ordinal))
        {
            why = "its path must be relative to the file that names it";
            return null;
        }

        var slashed = path.Replace('\\', '/');
        var full = Path.GetFullPath(Path.Combine(folder, Path.GetDirectoryName(from.Name) ?? "", slashed));
        if (!IsAllowed(full))
        {
            why = "it lies outside the spec's folder; a folder above it must be named with --root";
            return null;
        }

        try
        {
            if (!IsAllowed(Resolve(full)))
            {
                why = "it is a link to a place outside the spec's folder";
                return null;
            }

            // A pipe or a device has no length, and would keep us waiting for words that may never come.
            if (!Directory.Exists(full) && new FileInfo(Resolve(full)) is { Exists: true, Length: 0 })
            {
                why = "it is empty, or no file but a pipe or a device";
                return null;
            }

            why = "";
            return new(Path.GetRelativePath(folder, full).Replace('\\', '/'), TextFile.Read(full));
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            why = UserException.Of(e);
            return null;
        }
    }

    private bool IsAllowed(string full) => roots.Append(folder).Concat(allowed).Any(root => IsInside(full, root));

    private static bool IsInside(string full, string root)
    {
        var relative = Path.GetRelativePath(root, full);
        return relative != ".."
            && !relative.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal)
            && !Path.IsPathRooted(relative);
    }

    /// <summary>The path with every link in it followed, as far as it exists.</summary>
    private static string Resolve(string full)
    {
        var path = Path.GetPathRoot(full) ?? "/";
        foreach (var part in full[path.Length..].Split(Path.DirectorySeparatorChar, StringSplitOptions.RemoveEmptyEntries))
        {
            path = Path.Combine(path, part);
            FileSystemInfo entry = Directory.Exists(path) ? new DirectoryInfo(path) : new FileInfo(path);
            path = entry is { Exists: true } or { LinkTarget: not null }
                ? entry.ResolveLinkTarget(returnFinalTarget: true)?.FullName ?? path
                : path;
        }

        return path;
    }
}
