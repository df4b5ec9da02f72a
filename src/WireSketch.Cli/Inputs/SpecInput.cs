using WireSketch.Text;

namespace WireSketch.Cli.Inputs;

/// <summary>A spec to be compiled.</summary>
/// <param name="File">Its text; named as seen from its own folder, so that no output depends on where the command was called.</param>
/// <param name="Shown">Its name as the user gave it, or as it was found in a folder that the user gave.</param>
/// <param name="Folder">The folder that holds it, in full.</param>
internal sealed record SpecInput(SourceFile File, string Shown, string Folder)
{
    /// <summary>The name under which the user finds a file of this spec.</summary>
    public string NameOf(SourceFile file)
    {
        if (ReferenceEquals(file, File))
        {
            return Shown;
        }

        var slash = Shown.LastIndexOf('/');
        return slash < 0 ? file.Name : Tidy($"{Shown[..slash]}/{file.Name}");
    }

    /// <summary>The spec's name without its endings: the folder of its outputs is called so.</summary>
    public string Stem
    {
        get
        {
            var name = File.Name;
            foreach (var ending in new[] { ".yaml", ".yml", ".wsk" })
            {
                name = name.Length > ending.Length && name.EndsWith(ending, StringComparison.OrdinalIgnoreCase)
                    ? name[..^ending.Length]
                    : name;
            }

            return name is "(standard input)" ? "spec" : name;
        }
    }

    /// <summary>Takes <c>.</c> and <c>folder/..</c> out of a path.</summary>
    internal static string Tidy(string path)
    {
        var parts = new List<string>();
        foreach (var part in path.Split('/'))
        {
            if (part == ".." && parts.Count > 0 && parts[^1] is not (".." or ""))
            {
                parts.RemoveAt(parts.Count - 1);
            }
            else if (part != "." && !(part.Length == 0 && parts.Count > 0))
            {
                parts.Add(part);
            }
        }

        return string.Join('/', parts);
    }
}
