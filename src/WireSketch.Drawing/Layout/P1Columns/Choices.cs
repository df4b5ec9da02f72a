using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>The way a wire leaves a terminal above or below a box.</summary>
internal enum Leaving : byte
{
    /// <summary>Towards its far end.</summary>
    Towards,
    Left,
    Right,
}

/// <summary>What the search chooses. Everything else about a sheet follows from it by rule.</summary>
internal sealed class Choices
{
    /// <summary>Distance between the keys of neighboring sub-columns at the start, so that others fit between.</summary>
    public const int SubStep = 1024;

    /// <summary>
    /// Sub-column of each body: bodies of a zone with one key share a column, and columns stand in the order of the keys.
    /// </summary>
    public required int[] Sub { get; init; }

    /// <summary>Order of the ports of each side: entry 2 × body for the left side before turning, and one more for the right.</summary>
    public required int[][] SideOrder { get; init; }

    /// <summary>How the wires of a port above or below leave, by port.</summary>
    public required Leaving[] Leaves { get; init; }

    /// <summary>Bodies that face the other way.</summary>
    public required bool[] Turned { get; init; }

    /// <summary>Free ports that are opposite to the side they belong on.</summary>
    public required bool[] Opposite { get; init; }

    /// <summary>Wires in dummy nodes of their own rather than those of their hub.</summary>
    public required bool[] Alone { get; init; }

    /// <summary>True for a port on the right of its body, if it is not above or below.</summary>
    public bool OnRight(SheetModel model, int port) =>
        (model.PortSide[port] == PortSide.Right) ^ Turned[model.SlotBody[model.PortSlot[port]]] ^ Opposite[port];

    public static Choices For(SheetModel model, int[] sub, bool[] turned, bool[]? opposite = null)
    {
        opposite ??= new bool[model.PortCount];
        int[][] order = new int[2 * model.Bodies][];
        for (int b = 0; b < model.Bodies; b++)
        {
            int[] left = model.SidePorts[(4 * b) + (int)PortSide.Left], right = model.SidePorts[(4 * b) + (int)PortSide.Right];
            order[2 * b] = [.. left.Where(p => !opposite[p]), .. right.Where(p => opposite[p])];
            order[(2 * b) + 1] = [.. right.Where(p => !opposite[p]), .. left.Where(p => opposite[p])];
        }

        return new Choices
        {
            Sub = sub,
            SideOrder = order,
            Leaves = new Leaving[model.PortSide.Length],
            Turned = turned,
            Opposite = opposite,
            Alone = new bool[model.Graph.Wires.Length],
        };
    }
}
