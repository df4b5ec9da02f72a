using System.Collections.Immutable;
using System.Globalization;
using WireSketch.Documents;
using WireSketch.Drawing.Output;
using WireSketch.Drawing.Scenes;
using WireSketch.Drawing.Sheets;

namespace WireSketch.Cli.Outputs;

/// <summary>Everything that <c>build</c> writes for a spec, made before anything is written.</summary>
internal static class BuildPapers
{
    /// <summary>Dots per inch of the pictures: enough to print.</summary>
    private const int DotsPerInch = 200;

    public static IReadOnlyList<Paper> Of(Compilation result, DrawingOptions options, CancellationToken stop)
    {
        stop.ThrowIfCancellationRequested();
        var papers = PaperSet.From(result.ForPapers).Papers;
        return result.Install is { } install ? [.. Drawings(result, install.Wiring, install.Answers, options, stop), .. papers] : papers;
    }

    private static List<Paper> Drawings(
        Compilation result, Topology.Wiring wiring, Electrical.ElectricalResults answers, DrawingOptions options, CancellationToken stop)
    {
        ImmutableArray<Scene> scenes = DrawingSet.Draw(wiring, answers, result.Findings, options).Scenes;
        var papers = new List<Paper>();
        for (var i = 0; i < scenes.Length; i++)
        {
            stop.ThrowIfCancellationRequested();
            var name = i == 0 ? "drawing" : string.Create(CultureInfo.InvariantCulture, $"drawing-{i + 1}");
            papers.Add(new(name + ".svg", SvgWriter.Write(scenes[i])));
            papers.Add(new(name + ".png", PngWriter.Write(scenes[i], DotsPerInch)));
        }

        papers.Add(new("drawing.pdf", PdfWriter.Write(scenes, wiring.Spec.Job.Title?.Value ?? result.File.Name)));
        return papers;
    }
}
