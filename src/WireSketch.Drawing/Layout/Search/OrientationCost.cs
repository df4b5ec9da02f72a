using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>
/// What it costs to depart from the trade's way of drawing: in at the left, out at the right (common practice, no published
/// source). A device that only gives or only takes may face either way.
/// </summary>
internal sealed class OrientationCost
{
    private const int BodyTurned = 300, PortOpposite = 150;

    private readonly int[] bodies, ports;

    public OrientationCost(SheetModel model)
    {
        bool[] passes = new bool[model.Bodies];
        for (int b = 0; b < passes.Length; b++)
        {
            passes[b] = !model.BodySmall[b] && model.Ports(b, PortSide.Left).Length > 0 && model.Ports(b, PortSide.Right).Length > 0;
        }

        bodies = [.. Enumerable.Range(0, model.Bodies).Where(b => passes[b] && model.BodyTurns[b])];
        ports = [
            .. Enumerable.Range(0, model.PortCount)
                .Where(p => model.PortFree[p] && model.PortSlot[p] >= 0 && passes[model.SlotBody[model.PortSlot[p]]])
        ];
    }

    public long Price(Choices choices)
    {
        long price = 0;
        foreach (int b in bodies)
        {
            price += choices.Turned[b] ? BodyTurned : 0;
        }

        foreach (int p in ports)
        {
            price += choices.Opposite[p] ? PortOpposite : 0;
        }

        return price;
    }
}
