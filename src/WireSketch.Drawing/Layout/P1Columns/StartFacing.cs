using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>Which way the bodies that may turn round face at the start: towards the zones that most of their wires lead to.</summary>
internal static class StartFacing
{
    public static bool[] Of(SheetModel model)
    {
        int[] wrong = new int[model.Bodies];
        for (int l = 0; l < model.Links; l++)
        {
            Count(model.LinkFrom[l], model.LinkTo[l]);
            Count(model.LinkTo[l], model.LinkFrom[l]);
        }

        return Array.ConvertAll(wrong, n => n > 0);

        void Count(int near, int far)
        {
            int b = model.SlotBody[near];
            if (model.BodyTurns[b])
            {
                int way = Math.Sign(model.BodyZone[model.SlotBody[far]] - model.BodyZone[b]);
                wrong[b] += model.PortSide[model.SlotPort[near]] switch { PortSide.Left => way, PortSide.Right => -way, _ => 0 };
            }
        }
    }
}
