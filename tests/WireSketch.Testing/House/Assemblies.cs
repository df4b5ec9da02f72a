namespace WireSketch.Testing.House;

/// <summary>The compiled assemblies of the product, as they lie beside the command that was built with the tests.</summary>
public static class Assemblies
{
    private static readonly string[] Names = ["WireSketch", "WireSketch.Drawing", "WireSketch.Cli"];

    /// <summary>Which type of them uses which.</summary>
    public static TypeArrows Arrows { get; } = TypeArrows.Of(Names.Select(PathOf));

    /// <summary>Where an assembly of the product lies.</summary>
    /// <param name="name">Its name, without ending.</param>
    public static string PathOf(string name)
    {
        var own = new DirectoryInfo(AppContext.BaseDirectory);
        return Path.Combine(Repository.Root, "src", "WireSketch.Cli", "bin", own.Parent!.Name, own.Name, name + ".dll");
    }
}
