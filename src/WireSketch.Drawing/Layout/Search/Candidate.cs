using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>A complete sheet with its price.</summary>
internal sealed class Candidate
{
    public required Choices Choices { get; init; }
    public required ColumnOrder Order { get; init; }
    public required LabeledSheet Sheet { get; init; }
    public required long Price { get; init; }
}
