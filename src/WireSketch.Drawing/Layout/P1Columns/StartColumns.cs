using WireSketch.Drawing.Layout.Model;

namespace WireSketch.Drawing.Layout.P1Columns;

/// <summary>Sub-columns to start from: by longest path inside the zone, so that what feeds stands before what is fed.</summary>
internal static class StartColumns
{
    /// <summary>Places each body in one of its zone's first <paramref name="most"/> sub-columns, by rank.</summary>
    public static int[] ByRank(int[] rank, SheetModel model, ReadOnlySpan<int> most)
    {
        int[] sub = new int[model.Bodies];
        for (int b = 0; b < sub.Length; b++)
        {
            sub[b] = (Math.Min(rank[b], most[model.BodyZone[b]] - 1) + 1) * Choices.SubStep;
        }

        return sub;
    }

    /// <summary>Length of the longest path from terminal to terminal, left to right within a zone, that ends at each body.</summary>
    public static int[] Ranks(SheetModel model)
    {
        const int Deepest = 6;
        int[] rank = new int[model.Bodies];
        bool changed = true;
        for (int round = 0; changed && round < Deepest; round++)
        {
            changed = false;
            for (int l = 0; l < model.Links; l++)
            {
                int a = model.SlotBody[model.LinkFrom[l]], b = model.SlotBody[model.LinkTo[l]];
                if (model.BodyZone[a] != model.BodyZone[b] || a == b)
                {
                    continue;
                }

                var sideA = model.PortSide[model.SlotPort[model.LinkFrom[l]]];
                var sideB = model.PortSide[model.SlotPort[model.LinkTo[l]]];
                if (sideA == PortSide.Left && sideB == PortSide.Right)
                {
                    (a, b) = (b, a);
                }
                else if (sideA != PortSide.Right || sideB != PortSide.Left)
                {
                    continue;
                }

                if (rank[b] < rank[a] + 1 && rank[a] < Deepest)
                {
                    rank[b] = rank[a] + 1;
                    changed = true;
                }
            }
        }

        return rank;
    }
}
