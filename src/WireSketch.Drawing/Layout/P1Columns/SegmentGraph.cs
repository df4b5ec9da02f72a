using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>How a segment of wire lies in its channel.</summary>
internal enum SegmentShape : byte
{
    /// <summary>From the left wall to the right.</summary>
    Across,

    /// <summary>From the left wall back to it.</summary>
    TurnLeft,

    /// <summary>From the right wall back to it.</summary>
    TurnRight,
}

/// <summary>A segment of wire from wall to wall of a channel.</summary>
/// <param name="A">The node it starts at: on the left wall if it goes across.</param>
/// <param name="B">The node it ends at.</param>
/// <param name="Net">Segments with one number share dummies and do not count as crossing.</param>
/// <param name="Shape">How it lies.</param>
/// <param name="Channel">Its channel.</param>
internal record struct WireSegment(int A, int B, int Net, SegmentShape Shape, int Channel)
{
    /// <summary>How many links share it.</summary>
    public int Links { get; init; }

    /// <summary>Half the width it keeps clear.</summary>
    public int Half { get; init; }
}

/// <summary>
/// Wires cut into segments. Every link is a chain of segments, one for each channel it passes, joined by dummy nodes through the columns
/// between. Items of a column are its bodies (by number) and its dummy nodes (after the bodies). A node is where a segment ends on
/// the wall of a channel: slots first, then a left and a right end for each dummy node.
/// </summary>
internal sealed class SegmentGraph
{
    public required SheetModel Model { get; init; }
    public required ColumnPlan Columns { get; init; }
    public required Choices Choices { get; init; }

    public required int[] DummyColumn { get; init; }

    /// <summary>What a dummy node is known by: its hub, or its wire if that goes alone, and its pass-through at a wall.</summary>
    public required long[] DummyKey { get; init; }
    public required int[] DummyBundle { get; init; }
    public required int[] DummyHalf { get; init; }

    public required int[] NodeItem { get; init; }
    public required int[] NodeChannel { get; init; }

    /// <summary>True for a node on the right wall of its channel.</summary>
    public required bool[] NodeOnRight { get; init; }

    public required WireSegment[] Segment { get; init; }

    public required int[] NodeStart { get; init; }
    public required int[] NodeSegments { get; init; }
    public required int[] ChannelStart { get; init; }
    public required int[] ChannelSegments { get; init; }

    /// <summary>Segments at an item, to its left at 2 × item and to its right one after.</summary>
    public required int[] ItemStart { get; init; }
    public required int[] ItemSegments { get; init; }

    /// <summary>Items at which a segment turns back to the wall it came from.</summary>
    public required bool[] ItemTurns { get; init; }

    /// <summary>Segments of each link in order from left channel to right.</summary>
    public required int[] ChainStart { get; init; }
    public required int[] ChainSegments { get; init; }

    /// <summary>True if the chain runs from the link's far end to its near one.</summary>
    public required bool[] ChainReversed { get; init; }

    public int Dummies => DummyColumn.Length;
    public int Items => Model.Bodies + Dummies;
    public int Segments => Segment.Length;

    public bool IsDummy(int item) => item >= Model.Bodies;
    public int ColumnOf(int item) => item < Model.Bodies ? Columns.Of[item] : DummyColumn[item - Model.Bodies];
    public int LeftNode(int dummy) => Model.Slots + (2 * dummy);

    public ReadOnlySpan<int> At(int node) => NodeSegments.AsSpan(NodeStart[node], NodeStart[node + 1] - NodeStart[node]);

    public ReadOnlySpan<int> Beside(int item, int side)
    {
        int k = (2 * item) + side;
        return ItemSegments.AsSpan(ItemStart[k], ItemStart[k + 1] - ItemStart[k]);
    }

    public ReadOnlySpan<int> Chain(int link) => ChainSegments.AsSpan(ChainStart[link], ChainStart[link + 1] - ChainStart[link]);

    public ReadOnlySpan<int> In(int channel) =>
        ChannelSegments.AsSpan(ChannelStart[channel], ChannelStart[channel + 1] - ChannelStart[channel]);
}
