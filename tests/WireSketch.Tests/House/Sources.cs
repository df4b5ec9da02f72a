using WireSketch.Testing;

namespace WireSketch.Tests.House;

/// <summary>The source files of the repository, without what a build made.</summary>
internal static class Sources
{
    /// <summary>Those of the three projects of the product.</summary>
    public static IEnumerable<string> OfProduct => Under("src");

    /// <summary>Those of product and tests.</summary>
    public static IEnumerable<string> All => Under("src").Concat(Under("tests"));

    /// <summary>Those under a folder, counted from the root of the repository.</summary>
    public static IEnumerable<string> Under(string folder) => Directory
        .EnumerateFiles(Path.Combine(Repository.Root, folder), "*.cs", SearchOption.AllDirectories)
        .Where(f => !Path.GetRelativePath(Repository.Root, f).Split(Path.DirectorySeparatorChar).Any(p => p is "obj" or "bin"));
}
