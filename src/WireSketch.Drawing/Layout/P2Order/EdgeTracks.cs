using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>
/// The dummy nodes by which wires leave terminals above or below a box. Terminals whose wires leave left stand left of the others,
/// and the nearer the side, the nearer the box the dummy node: so the dummy nodes of one box never cross.
/// </summary>
internal static class EdgeTracks
{
    /// <summary>Each slot of an edge with the number of dummy nodes of its side that lie between it and the box.</summary>
    public static IEnumerable<(int Slot, int Depth)> Of(SegmentGraph graph, int body, PortSide side)
    {
        var model = graph.Model;
        int[] ports = model.SidePorts[(4 * body) + (int)side];
        if (ports.Length == 0)
        {
            yield break;
        }

        int depth = 0;
        foreach (int p in ports)
        {
            if (LeavesLeft(graph, p))
            {
                for (int k = 0; k < model.PortSlots[p]; k++)
                {
                    yield return (model.PortSlot[p] + k, depth++);
                }
            }
        }

        depth = 0;
        for (int i = ports.Length - 1; i >= 0; i--)
        {
            int p = ports[i];
            if (!LeavesLeft(graph, p))
            {
                for (int k = 0; k < model.PortSlots[p]; k++)
                {
                    yield return (model.PortSlot[p] + k, depth++);
                }
            }
        }
    }

    public static bool LeavesLeft(SegmentGraph graph, int port) => graph.NodeOnRight[graph.Model.PortSlot[port]];
}
