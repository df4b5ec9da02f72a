namespace WireSketch.Drawing.Layout.Model;

/// <summary>How wide a box must be for its names, its lower and upper terminals and what hangs below it.</summary>
internal static class BoxWidth
{
    /// <summary>Least distance between two terminals of an upper or lower edge.</summary>
    public const int EdgePitch = 12;

    public static int Of(SheetModel model, int body)
    {
        var device = model.Device(body);
        int width = device.Width;
        int left = Widest(model, model.Ports(body, PortSide.Left)), right = Widest(model, model.Ports(body, PortSide.Right));
        int free = Math.Max(Widest(model, model.Ports(body, PortSide.Left), true), Widest(model, model.Ports(body, PortSide.Right), true));
        (left, right) = (Math.Max(left, free), Math.Max(right, free));
        if (device.Shape == DeviceShape.Box)
        {
            width = Math.Max(width, left + right + 16);
        }

        int lower = Edge(model, body, PortSide.Bottom);
        foreach (int s in model.BodySatellites[body])
        {
            lower += model.Satellites[s].Left + model.Satellites[s].Right;
        }

        return Measure.Up(Math.Max(width, Math.Max(lower, Edge(model, body, PortSide.Top))));
    }

    /// <summary>Room that a terminal takes on an upper or lower edge.</summary>
    public static int OnEdge(SheetModel model, int port) => Math.Max(EdgePitch, model.PortNameWidth[port] + 6);

    private static int Edge(SheetModel model, int body, PortSide side)
    {
        int width = 0;
        foreach (int p in model.Ports(body, side))
        {
            width += OnEdge(model, p);
        }

        return width;
    }

    private static int Widest(SheetModel model, ReadOnlySpan<int> ports, bool free = false)
    {
        int widest = 0;
        foreach (int p in ports)
        {
            widest = !free || model.PortFree[p] ? Math.Max(widest, model.PortNameWidth[p]) : widest;
        }

        return widest;
    }
}
