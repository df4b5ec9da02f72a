using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.P2Order;

/// <summary>
/// The lanes by which wires leave terminals above or below a box. Terminals whose wires leave left stand left of the others,
/// and the nearer the side, the nearer the box the lane: so the lanes of one box never cross.
/// </summary>
internal static class EdgeLanes
{
    /// <summary>Each slot of an edge with the number of lanes of its side that lie between it and the box.</summary>
    public static IEnumerable<(int Slot, int Depth)> Of(SegmentGraph wiring, int body, PortSide side)
    {
        var model = wiring.Model;
        int[] ports = model.SidePorts[(4 * body) + (int)side];
        if (ports.Length == 0)
        {
            yield break;
        }

        int depth = 0;
        foreach (int p in ports)
        {
            if (LeavesLeft(wiring, p))
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
            if (!LeavesLeft(wiring, p))
            {
                for (int k = 0; k < model.PortSlots[p]; k++)
                {
                    yield return (model.PortSlot[p] + k, depth++);
                }
            }
        }
    }

    public static bool LeavesLeft(SegmentGraph wiring, int port) => wiring.NodeOnRight[wiring.Model.PortSlot[port]];
}
