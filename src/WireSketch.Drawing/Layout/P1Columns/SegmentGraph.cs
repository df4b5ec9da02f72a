using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>How a piece of wire lies in its gutter.</summary>
internal enum SegmentShape : byte
{
    /// <summary>From the left wall to the right.</summary>
    Across,

    /// <summary>From the left wall back to it.</summary>
    TurnLeft,

    /// <summary>From the right wall back to it.</summary>
    TurnRight,
}

/// <summary>A piece of wire from wall to wall of a gutter.</summary>
/// <param name="A">The node it starts at: on the left wall if it goes across.</param>
/// <param name="B">The node it ends at.</param>
/// <param name="Net">Pieces with one number share lanes and do not count as crossing.</param>
/// <param name="Links">How many links share it.</param>
/// <param name="Shape">How it lies.</param>
/// <param name="Gutter">Its gutter.</param>
/// <param name="Half">Half the width it keeps clear.</param>
internal record struct WireSegment(int A, int B, int Net, int Links, SegmentShape Shape, int Gutter, int Half);

/// <summary>
/// Wires cut into pieces. Every link is a chain of pieces, one for each gutter it passes, joined by lanes through the columns
/// between. Items of a column are its bodies (by number) and its lanes (after the bodies). A node is where a piece ends on
/// the wall of a gutter: slots first, then a left and a right end for each lane.
/// </summary>
internal sealed class SegmentGraph
{
    public required SheetModel Model { get; init; }
    public required ColumnPlan Columns { get; init; }
    public required Choices Choices { get; init; }

    public required int[] LaneColumn { get; init; }

    /// <summary>What a lane is known by: its hub, or its wire if that goes alone, and its pass-through at a wall.</summary>
    public required long[] LaneKey { get; init; }
    public required int[] LaneBundle { get; init; }
    public required int[] LaneHalf { get; init; }

    public required int[] NodeItem { get; init; }
    public required int[] NodeGutter { get; init; }

    /// <summary>True for a node on the right wall of its gutter.</summary>
    public required bool[] NodeOnRight { get; init; }

    public required WireSegment[] Piece { get; init; }

    public required int[] NodeStart { get; init; }
    public required int[] NodePieces { get; init; }
    public required int[] GutterStart { get; init; }
    public required int[] GutterPieces { get; init; }

    /// <summary>Pieces at an item, to its left at 2 × item and to its right one after.</summary>
    public required int[] ItemStart { get; init; }
    public required int[] ItemPieces { get; init; }

    /// <summary>Items at which a piece turns back to the wall it came from.</summary>
    public required bool[] ItemTurns { get; init; }

    /// <summary>Pieces of each link in order from left gutter to right.</summary>
    public required int[] ChainStart { get; init; }
    public required int[] ChainPieces { get; init; }

    /// <summary>True if the chain runs from the link's far end to its near one.</summary>
    public required bool[] ChainReversed { get; init; }

    public int Lanes => LaneColumn.Length;
    public int Items => Model.Bodies + Lanes;
    public int Pieces => Piece.Length;

    public bool IsLane(int item) => item >= Model.Bodies;
    public int ColumnOf(int item) => item < Model.Bodies ? Columns.Of[item] : LaneColumn[item - Model.Bodies];
    public int LeftNode(int lane) => Model.Slots + (2 * lane);

    public ReadOnlySpan<int> At(int node) => NodePieces.AsSpan(NodeStart[node], NodeStart[node + 1] - NodeStart[node]);

    public ReadOnlySpan<int> Beside(int item, int side)
    {
        int k = (2 * item) + side;
        return ItemPieces.AsSpan(ItemStart[k], ItemStart[k + 1] - ItemStart[k]);
    }

    public ReadOnlySpan<int> Chain(int link) => ChainPieces.AsSpan(ChainStart[link], ChainStart[link + 1] - ChainStart[link]);

    public ReadOnlySpan<int> In(int gutter) => GutterPieces.AsSpan(GutterStart[gutter], GutterStart[gutter + 1] - GutterStart[gutter]);
}
