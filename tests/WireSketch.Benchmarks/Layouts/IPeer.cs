using WireSketch.Drawing.Layout;

namespace WireSketch.Benchmarks.Layouts;

/// <summary>A general library that lays out the same graphs. Test tooling: the product uses none.</summary>
internal interface IPeer : IDisposable
{
    string Name { get; }

    /// <summary>Lays a graph out; null where the library fails or takes too long.</summary>
    /// <param name="subject">The graph.</param>
    /// <param name="ours">Our layout of it, for the sizes of boxes.</param>
    Figures? Measure(Subject subject, SheetLayout ours);
}
