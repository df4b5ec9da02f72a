using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>What it costs to depart from the trade's way of drawing: in at the left, out at the right (common practice, no published source).</summary>
internal sealed class Convention(SheetModel model)
{
    private const int BodyTurned = 300, PortOpposite = 150;

    public long Price(Choices choices)
    {
        long price = 0;
        for (int b = 0; b < model.Bodies; b++)
        {
            price += choices.Turned[b] && !model.BodySmall[b] ? BodyTurned : 0;
        }

        foreach (bool opposite in choices.Opposite)
        {
            price += opposite ? PortOpposite : 0;
        }

        return price;
    }
}
