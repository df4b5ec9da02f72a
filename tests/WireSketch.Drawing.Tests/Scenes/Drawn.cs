using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;
using WireSketch.Testing;

namespace WireSketch.Drawing.Tests.Scenes;

/// <summary>Shipped specs drawn with little effort: the laws hold at any effort.</summary>
internal static class Drawn
{
    private const double Effort = 0.05;

    public static Compilation Compile(string name) => Compiler.Compile(ShippedSpecs.Open($"specs/{name}.wsk.yaml"), ShippedSpecs.Files);

    public static DrawingSet Draw(string name, DrawingOptions? options = null)
    {
        var compiled = Compile(name);
        return DrawingSet.Draw(
            compiled.Install!.Wiring,
            compiled.Install.Answers,
            compiled.Findings,
            (options ?? new()) with { Effort = Effort });
    }

    /// <summary>Groups of a scene that carry an attribute, with its value.</summary>
    public static IEnumerable<(string Value, GroupShape Group)> Groups(Scene scene, string mark) =>
        scene.All().OfType<GroupShape>().SelectMany(g => g.Marks.Where(m => m.Name == mark).Select(m => (m.Value, g)));

    public static IEnumerable<string> Marks(Scene scene, string mark) =>
        scene.All().SelectMany(s => s.Marks).Where(m => m.Name == mark).Select(m => m.Value);

    /// <summary>The place of every text on the page, turned where it is written upwards.</summary>
    public static Rect BoxOf(TextShape text)
    {
        var box = text.Box;
        return !text.Upwards ? box : new(text.At.X - (box.Height * 0.78), text.At.Y - box.Width, box.Height, box.Width);
    }
}
