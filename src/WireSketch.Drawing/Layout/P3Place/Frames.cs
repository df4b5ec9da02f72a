using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// The outline of every item about its reference ordinate: the top of a box, the terminal of a slim device or holder, the
/// middle of a dummy node. Outlines include half the space to the next item and the labels beside the box.
/// </summary>
internal sealed class Frames
{
    private readonly ColumnOrder order;
    private readonly int spread;

    private Frames(ColumnOrder order, int spread)
    {
        this.order = order;
        this.spread = spread;
        var w = order.Graph;
        Top = new int[w.Model.Bodies];
        Bottom = new int[w.Model.Bodies];
        Up = new int[w.Items];
        Down = new int[w.Items];
        Dy = new int[w.NodeItem.Length];
        EdgeX = new int[w.Model.PortSide.Length];
        SatelliteX = new int[w.Model.Satellites.Length];
        SpareRows = new int[2 * w.Model.Bodies];
        Shift = new int[2 * w.Model.Bodies];
    }

    /// <summary>Distance of two rows without large labels.</summary>
    public int Pitch => (2 * Model.Measure.HalfRow) + spread;

    /// <summary>Top and bottom of each body's box.</summary>
    public int[] Top { get; }
    public int[] Bottom { get; }

    /// <summary>How far each item reaches up and down.</summary>
    public int[] Up { get; }
    public int[] Down { get; }

    /// <summary>Each node's ordinate about its item's reference.</summary>
    public int[] Dy { get; }

    /// <summary>Abscissa of each port of an upper or lower edge, from the left edge of its box.</summary>
    public int[] EdgeX { get; }

    /// <summary>Abscissa of each satellite's wire, from the left edge of its host's box.</summary>
    public int[] SatelliteX { get; }

    /// <summary>How many rows the terminals of a side may move down: entry 2 × body + side.</summary>
    public int[] SpareRows { get; }

    /// <summary>How many rows they have been moved.</summary>
    public int[] Shift { get; }

    /// <summary>The outlines of an order.</summary>
    /// <param name="order">The order.</param>
    /// <param name="spread">What is added to the distance of rows and of devices, for sheets that have height to spare; a multiple of the
    /// grid.</param>
    public static Frames Of(ColumnOrder order, int spread = 0)
    {
        var frames = new Frames(order, spread);
        var w = order.Graph;
        for (int b = 0; b < w.Model.Bodies; b++)
        {
            frames.Measure(b);
        }

        for (int k = 0; k < w.Dummies; k++)
        {
            frames.Up[w.Model.Bodies + k] = frames.Down[w.Model.Bodies + k] = w.DummyHalf[k];
        }

        return frames;
    }

    /// <summary>Moves the terminals of a side down to the given row.</summary>
    public void MoveRows(int body, int side, int rows)
    {
        int by = (rows - Shift[(2 * body) + side]) * Pitch;
        Shift[(2 * body) + side] = rows;
        foreach (int p in order.SideOrder[(2 * body) + side])
        {
            for (int k = 0; k < order.Graph.Model.PortSlots[p]; k++)
            {
                Dy[order.Graph.Model.PortSlot[p] + k] += by;
            }
        }
    }

    private void Measure(int b)
    {
        var model = order.Graph.Model;
        var device = model.Device(b);
        bool slim = device.Shape is DeviceShape.Slim or DeviceShape.Holder;
        int half = device.Shape == DeviceShape.Holder ? Model.Measure.HalfHolder : Model.Measure.HalfSlim;
        int header = slim ? device.HeaderHeight + half : device.HeaderHeight + NameRoom(model.Ports(b, PortSide.Top), model);
        int over = int.MaxValue, under = int.MinValue;
        int left = Rows(order.SideOrder[2 * b], slim, header, ref over, ref under);
        int right = Rows(order.SideOrder[(2 * b) + 1], slim, header, ref over, ref under);
        int last = Math.Max(left, right);
        under = under == int.MinValue ? 0 : last + under;
        if (slim)
        {
            Top[b] = -header;
            Bottom[b] = Math.Max(last, 0) + half + device.FooterHeight;
        }
        else
        {
            int rows = last == int.MinValue ? header + (device.Shape == DeviceShape.Chassis ? 0 : 2) : last + 8;
            Bottom[b] = rows + NameRoom(model.Ports(b, PortSide.Bottom), model) + device.FooterHeight;
            if (device.Shape == DeviceShape.Chassis)
            {
                Bottom[b] = Math.Max(Bottom[b], Model.Measure.ChassisHeight);
            }

            Spare(2 * b, left, last);
            Spare((2 * b) + 1, right, last);
        }

        int gap = (slim ? 2 : 4) + (spread / 2);
        int up = Math.Max(gap - Top[b], over == int.MaxValue ? 0 : -over);
        int down = Math.Max(Bottom[b] + gap, under);
        foreach (int s in model.BodySatellites[b])
        {
            down = Math.Max(down, Bottom[b] + model.Satellites[s].Drop + model.Satellites[s].Height + 4);
        }

        Edges.Lay(order.Graph, b, this, ref up, ref down);
        Up[b] = up;
        Down[b] = down;
    }

    private void Spare(int side, int last, int lastOfBoth)
    {
        if (last != int.MinValue)
        {
            SpareRows[side] = (lastOfBoth - last) / Pitch;
        }
    }

    private static int NameRoom(ReadOnlySpan<int> ports, SheetModel model)
    {
        foreach (int p in ports)
        {
            if (model.PortNameWidth[p] > 0)
            {
                return Model.Measure.NameHeight;
            }
        }

        return 0;
    }

    /// <summary>
    /// Rows of a side from the top; returns the last, how far up labels reach, and the most that one needs under its row.
    /// </summary>
    private int Rows(int[] ports, bool slim, int header, ref int over, ref int under)
    {
        var model = order.Graph.Model;
        int y = int.MinValue, lastHalf = 0;
        foreach (int p in ports)
        {
            for (int k = 0; k < model.PortSlots[p]; k++)
            {
                int s = model.PortSlot[p] + k, half = model.SlotHalf[s];
                y = y == int.MinValue
                    ? (slim ? 0 : Model.Measure.Up(header + Model.Measure.HalfRow))
                    : y + Model.Measure.Up(lastHalf + half) + (k == 0 ? spread : 0);
                Dy[s] = y;
                lastHalf = half;
                over = Math.Min(over, y - half);
                under = Math.Max(under, half);
            }
        }

        return y;
    }
}
