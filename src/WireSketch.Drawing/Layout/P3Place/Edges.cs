using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.P3Place;

/// <summary>
/// Lays out the upper and lower edge of a box: where its terminals and satellites are along it, and the dummy nodes by which their wires
/// leave.
/// </summary>
internal static class Edges
{
    /// <summary>From the box to its first dummy node, and from what hangs below it.</summary>
    private const int FirstTrack = 12, BelowSatellite = 8;

    public static void Lay(SegmentGraph graph, int body, Frames frames, ref int up, ref int down)
    {
        var model = graph.Model;
        LayAlong(graph, body, PortSide.Top, frames);
        LayAlong(graph, body, PortSide.Bottom, frames);
        int hanging = 0;
        foreach (int s in model.BodySatellites[body])
        {
            hanging = Math.Max(hanging, model.Satellites[s].Drop + model.Satellites[s].Height);
        }

        LayTracks(graph, body, PortSide.Top, frames, new(-1, frames.Top[body], FirstTrack), ref up);
        int below = frames.Bottom[body] + hanging;
        LayTracks(graph, body, PortSide.Bottom, frames, new(1, below, hanging > 0 ? BelowSatellite : FirstTrack), ref down);
    }

    private static void LayTracks(SegmentGraph graph, int body, PortSide side, Frames frames, EdgeOutline outline, ref int reach)
    {
        var model = graph.Model;
        if (model.Ports(body, side).Length == 0)
        {
            return;
        }

        int last = 0, y = 0;
        foreach (var (slot, depth) in EdgeTracks.Of(graph, body, side))
        {
            int half = model.SlotLabel[slot] >= 0
                ? Measure.HalfLabel(model.Graph.Wires[model.SlotLabel[slot]].LabelHeight)
                : Measure.HalfLine;
            if (depth == 0)
            {
                int clear = (outline.Sign * outline.Edge) + Math.Max(outline.First, half);
                y = Measure.Up(clear);
            }
            else
            {
                y += Measure.Up(last + half);
            }

            last = half;
            frames.Dy[slot] = outline.Sign * y;
            reach = Math.Max(reach, y + half);
        }
    }

    /// <summary>Left-leaving terminals, then satellites, then right-leaving ones; the whole in the middle of the edge.</summary>
    private static void LayAlong(SegmentGraph graph, int body, PortSide side, Frames frames)
    {
        var model = graph.Model;
        var ports = model.Ports(body, side);
        int[] satellites = side == PortSide.Bottom ? model.BodySatellites[body] : [];
        if (ports.Length == 0 && satellites.Length == 0)
        {
            return;
        }

        if (model.BodyShape[body] == DeviceShape.Chassis && ports.Length == 1)
        {
            frames.EdgeX[ports[0]] = Measure.ChassisTerminal;
            return;
        }

        int total = 0;
        foreach (int p in ports)
        {
            total += BoxWidth.OnEdge(model, p);
        }

        foreach (int s in satellites)
        {
            total += model.Satellites[s].Left + model.Satellites[s].Right;
        }

        int spare = model.BodyWidth[body] - total, segments = ports.Length + satellites.Length;
        int x = spare / (segments + 1);
        foreach (int p in ports)
        {
            Put(p, true);
        }

        foreach (int s in satellites)
        {
            frames.SatelliteX[s] = x + model.Satellites[s].Left;
            x += model.Satellites[s].Left + model.Satellites[s].Right + (spare / (segments + 1));
        }

        foreach (int p in ports)
        {
            Put(p, false);
        }

        void Put(int port, bool left)
        {
            if (EdgeTracks.LeavesLeft(graph, port) == left)
            {
                int room = BoxWidth.OnEdge(model, port);
                frames.EdgeX[port] = x + (room / 2);
                x += room + (spare / (segments + 1));
            }
        }
    }

    /// <summary>Where the tracks of an edge begin.</summary>
    /// <param name="Sign">-1 above the box, 1 below it.</param>
    /// <param name="Edge">Ordinate of the edge, or of the end of what hangs from it.</param>
    /// <param name="First">Least distance of the first track from it.</param>
    private readonly record struct EdgeOutline(int Sign, int Edge, int First);
}
