namespace WireSketch.Testing;

/// <summary>Where the files of the repository are.</summary>
public static class Repository
{
    /// <summary>The folder that holds the solution.</summary>
    public static string Root { get; } = Find();

    /// <summary>The text of a file, its path counted from the root.</summary>
    public static string Read(string path) => File.ReadAllText(Path.Combine(Root, path));

    private static string Find()
    {
        for (var folder = new DirectoryInfo(AppContext.BaseDirectory); folder is not null; folder = folder.Parent)
        {
            if (File.Exists(Path.Combine(folder.FullName, "WireSketch.sln")))
            {
                return folder.FullName;
            }
        }

        throw new InvalidOperationException("The tests do not run inside the repository.");
    }
}
