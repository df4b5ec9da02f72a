using WireSketch.Drawing.Layout;
using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;
using WireSketch.Drawing.Tests.Layout;
using WireSketch.Testing;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>A graph to lay out, and the page for it.</summary>
/// <param name="Class">The row of the table that it counts for.</param>
/// <param name="Name">What it is called in messages.</param>
/// <param name="Graph">The graph.</param>
/// <param name="Options">The page.</param>
internal sealed record Subject(string Class, string Name, SheetGraph Graph, LayoutOptions Options)
{
    private static readonly LayoutOptions Letter = new(740, 440);

    /// <summary>Sizes of generated systems, in devices, and how many of a hundred have each.</summary>
    private static readonly (int Devices, int Percent)[] Sizes = [(8, 20), (15, 20), (25, 20), (30, 15), (60, 12), (100, 8), (300, 5)];

    /// <summary>Every sheet of every shipped spec.</summary>
    public static IEnumerable<Subject> Shipped()
    {
        foreach (string file in Directory.GetFiles(Path.Combine(Repository.Root, "specs"), "*.wsk.yaml").Order(StringComparer.Ordinal))
        {
            string name = Path.GetFileName(file)[..^".wsk.yaml".Length];
            var compiled = Compiler.Compile(ShippedSpecs.Open($"specs/{name}.wsk.yaml"), ShippedSpecs.Files);
            foreach (var placed in new DrawingSetBuilder(
                compiled.Install!.Wiring, compiled.Install.Answers, compiled.Findings, new DrawingOptions { Effort = 0.05 }).Arrange())
            {
                var area = placed.Page.Area;
                yield return new(
                    $"shipped: {name}",
                    $"{name}, {placed.Sheet.Name}",
                    placed.Sheet.Graph,
                    new((int)area.Width.Value, (int)area.Height.Value));
            }
        }
    }

    /// <summary>Generated systems of 8 to 300 devices.</summary>
    public static IEnumerable<Subject> Generated(int systems, int seed)
    {
        foreach (var (devices, percent) in Sizes)
        {
            int count = Math.Max(1, systems * percent / 100);
            for (int k = 0; k < count; k++)
            {
                yield return Of(devices, seed + k);
            }
        }
    }

    public static Subject Of(int devices, int seed) =>
        new($"{devices} devices", $"{devices} devices, seed {seed}", SyntheticSystem.Of(devices, seed), Letter);
}
