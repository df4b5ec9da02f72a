using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>An ordered sheet whose items have ordinates: none overlaps its neighbors, all on the grid.</summary>
internal sealed class Placement
{
    public required ColumnOrder Order { get; init; }
    public required Frames Frames { get; init; }

    /// <summary>Ordinate of each item's reference.</summary>
    public required int[] Y { get; init; }

    /// <summary>Height of everything together, from 0.</summary>
    public required int Height { get; init; }

    /// <summary>The height that it was placed in.</summary>
    public required int Room { get; init; }

    /// <summary>The least height that the fullest column allows.</summary>
    public required int LeastHeight { get; init; }

    public SegmentGraph Graph => Order.Graph;

    public int NodeY(int node) => Y[Graph.NodeItem[node]] + Frames.Dy[node];
}
