using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.Search;

namespace WireSketch.Drawing.Layout;

/// <summary>
/// Lays a sheet out: a layered drawing with ports, routed in tracks, its labels placed by construction, chosen among many
/// arrangements by what the whole drawing costs in crossings, bends, length and size of text. Models: K. Sugiyama and
/// others 1981; C. D. Schulze, M. Spönemann, R. von Hanxleden 2014; A. Hashimoto, J. Stevens 1971.
/// </summary>
internal static class SheetArranger
{
    /// <summary>Lays a sheet out.</summary>
    /// <param name="graph">What the sheet shows. Ids of devices, terminals and wires are unique; wires end at its terminals.</param>
    /// <param name="options">The page, the effort, and an arrangement to stay close to.</param>
    /// <returns>The layout: the same for the same graph and options on every machine.</returns>
    /// <exception cref="ArgumentException">A wire ends at a terminal that no device has, an id occurs twice, or a device's zone does not
    /// exist.</exception>
    public static SheetLayout Arrange(SheetGraph graph, LayoutOptions options)
    {
        ArgumentNullException.ThrowIfNull(graph);
        ArgumentNullException.ThrowIfNull(options);
        var model = ModelReader.Read(graph);
        return SheetAssembler.Assemble(Annealer.Run(model, options));
    }
}
