using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P3Place;

namespace WireSketch.Drawing.Layout.P4Route;

/// <summary>
/// A placed sheet whose channels have their vertical stretches in order. The segments of a channel that share nodes hang on one
/// vertical segment; vertical segments without height are wires lying straight and need no track.
/// </summary>
internal sealed class RoutedSheet
{
    public required Placement Placed { get; init; }

    /// <summary>Vertical of each segment.</summary>
    public required int[] VerticalOf { get; init; }

    /// <summary>Upper and lower end of each vertical segment.</summary>
    public required int[] Upper { get; init; }
    public required int[] Lower { get; init; }

    /// <summary>Half the width that each vertical segment keeps clear.</summary>
    public required int[] Half { get; init; }

    /// <summary>For each channel its vertical segments from left to right; straight ones are left out.</summary>
    public required int[][] Tracks { get; init; }

    /// <summary>Crossings, counted for every pair of links.</summary>
    public required int Crossings { get; init; }

    /// <summary>Pairs of vertical segments that would lie on each other, as nodes: one on the left wall, one on the right.</summary>
    public required IReadOnlyList<(int Left, int Right)> Clashes { get; init; }

    public SegmentGraph Graph => Placed.Graph;
}
