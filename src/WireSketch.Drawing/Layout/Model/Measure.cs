namespace WireSketch.Drawing.Layout.Model;

/// <summary>The distances a sheet is built from, in units (text is 7.25 high).</summary>
internal static class Measure
{
    /// <summary>All ordinates are multiples of this, so that two of them are equal or well apart.</summary>
    public const int Grid = 4;

    /// <summary>Half the distance between two terminals of a side, unless a label needs more.</summary>
    public const int HalfRow = 10;

    /// <summary>Half the height of a slim box.</summary>
    public const int HalfSlim = 8;

    /// <summary>Half the height of an inline holder without captions.</summary>
    public const int HalfHolder = 6;

    /// <summary>Least height of a chassis point.</summary>
    public const int ChassisHeight = 12;

    /// <summary>Where a chassis point's terminal is, from the left edge of its box.</summary>
    public const int ChassisTerminal = 8;

    /// <summary>Half the space a wire keeps from wires running beside it through a column.</summary>
    public const int HalfLine = 4;

    /// <summary>Half the space a wire keeps from wires running beside it through a channel.</summary>
    public const int HalfTrack = 3;

    /// <summary>Least distance of a vertical stretch from the wall of its channel.</summary>
    public const int WallClear = 8;

    /// <summary>Least width of a channel.</summary>
    public const int LeastChannel = 16;

    /// <summary>Distance of a label from the terminal it belongs to.</summary>
    public const int LabelStand = 4;

    /// <summary>Where the wires of one terminal part that need rows of their own.</summary>
    public const int Tie = 4;

    /// <summary>Height at the top of a zone that is left to its heading.</summary>
    public const int Heading = 20;

    /// <summary>Space left free inside the edge of the sheet.</summary>
    public const int Margin = 8;

    /// <summary>Width of a wall between zones.</summary>
    public const int WallWidth = 10;

    /// <summary>Height of a name written inside a box above or below a terminal.</summary>
    public const int NameHeight = 7;

    /// <summary>The next multiple of the grid that is not below the value.</summary>
    public static int Up(int v) => (v + Grid - 1) & -Grid;

    /// <summary>The last multiple of the grid that is not above the value.</summary>
    public static int Down(int v) => v & -Grid;

    /// <summary>Half the height that a label needs on its row.</summary>
    public static int HalfLabel(int height) => ((height + 1) / 2) + 1;

    /// <summary>Half the width that a wire needs among parallel tracks.</summary>
    public static int HalfOf(int weight) => Math.Max(HalfTrack, (weight + 3) / 2);
}
