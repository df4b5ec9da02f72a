using WireSketch.Text;

namespace WireSketch.Testing;

/// <summary>The specs in the repository's <c>specs</c> folder.</summary>
public static class ShippedSpecs
{
    /// <summary>Names of the good specs, in ordinal order.</summary>
    public static IReadOnlyList<string> Good { get; } = NamesIn("specs");

    /// <summary>Names of the deliberately wrong specs.</summary>
    public static IReadOnlyList<string> Wrong { get; } = NamesIn("specs/wrong");

    public static SourceFile Open(string name) => new(Path.GetFileName(name), Repository.Read(name));

    /// <summary>The files that shipped specs use.</summary>
    public static ISpecFiles Files { get; } = new Folder();

    private static List<string> NamesIn(string folder) =>
        [
            .. Directory.GetFiles(Path.Combine(Repository.Root, folder), "*.wsk.yaml")
                .Select(f => $"{folder}/{Path.GetFileName(f)}")
                .Order(StringComparer.Ordinal)
        ];

    private sealed class Folder : ISpecFiles
    {
        public SourceFile? Read(SourceFile from, string path, out string why)
        {
            why = "there is no such file";
            return File.Exists(Path.Combine(Repository.Root, "specs", path)) ? new(path, Repository.Read("specs/" + path)) : null;
        }
    }
}
