namespace WireSketch.Mutations;

/// <summary>A stage whose code is changed.</summary>
/// <param name="Name">As the table calls it.</param>
/// <param name="Folder">From the root of the repository.</param>
internal sealed record Stage(string Name, string Folder)
{
    private static readonly Stage[] Known =
    [
        new("Quantities", "src/WireSketch/Quantities"),
        new("Tables", "src/WireSketch/Tables"),
        new("Electrical", "src/WireSketch/Electrical"),
        new("Installation", "src/WireSketch/Installation"),
        new("Rules", "src/WireSketch/Rules"),
        new("Sizing", "src/WireSketch/Sizing"),
        new("Layout", "src/WireSketch.Drawing/Layout"),
    ];

    /// <summary>Those that a tree has.</summary>
    public static Stage[] Of(string root) => [.. Known.Where(s => Directory.Exists(Path.Combine(root, s.Folder)))];
}
