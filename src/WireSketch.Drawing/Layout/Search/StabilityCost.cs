using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>What it costs to move away from an earlier arrangement, so that a small edit of a spec moves little of its drawing.</summary>
internal sealed class StabilityCost
{
    private const int OtherSubColumn = 6000, PairTurned = 1000;

    private readonly SheetModel model;
    private readonly int[] subColumns, rank;
    private readonly bool[] turned, opposite;

    public StabilityCost(SheetModel model, Arrangement previous)
    {
        this.model = model;
        subColumns = new int[model.Bodies];
        rank = new int[model.Bodies];
        turned = StartFacing.Of(model);
        opposite = new bool[model.PortCount];
        var known = new Dictionary<string, ArrangedDevice>(StringComparer.Ordinal);
        foreach (var device in previous.Devices)
        {
            known[device.Id] = device;
        }

        for (int b = 0; b < model.Bodies; b++)
        {
            subColumns[b] = rank[b] = -1;
            if (known.TryGetValue(model.Device(b).Id, out var was) && was.Zone == model.Graph.Zones[model.BodyZone[b]].Id)
            {
                subColumns[b] = Math.Max(0, was.SubColumn);
                rank[b] = Math.Max(0, was.Rank);
                turned[b] = was.Turned && model.BodyTurns[b];
                int device = model.BodyDevice[b];
                for (int k = 0; k < model.Device(b).Ports.Length; k++)
                {
                    int p = model.DevicePort[device] + k;
                    opposite[p] = model.PortFree[p] && !was.Opposite.IsDefault && was.Opposite.Contains(model.Device(b).Ports[k].Id);
                }
            }
        }
    }

    /// <summary>Sub-columns as they were; a new body joins the first of its partners that it finds in its zone.</summary>
    public int[] SubColumns()
    {
        int[] sub = (int[])subColumns.Clone();
        for (int l = 0; l < model.Links; l++)
        {
            int a = model.SlotBody[model.LinkFrom[l]], b = model.SlotBody[model.LinkTo[l]];
            if (model.BodyZone[a] == model.BodyZone[b])
            {
                sub[b] = sub[b] < 0 ? sub[a] : sub[b];
                sub[a] = sub[a] < 0 ? sub[b] : sub[a];
            }
        }

        return Array.ConvertAll(sub, s => (Math.Max(0, s) + 8) * Choices.SubStep);
    }

    public bool[] Facing() => turned;

    /// <summary>Ports that were opposite to the side they belong on.</summary>
    public bool[] Opposite() => opposite;

    /// <summary>Positions as they were; -1 for new bodies.</summary>
    public int[] Positions()
    {
        int most = 1;
        foreach (int r in rank)
        {
            most = Math.Max(most, r + 1);
        }

        return Array.ConvertAll(rank, r => r < 0 ? -1 : (int)(((2L * r) + 1) * ColumnOrder.Whole / (2 * most)));
    }

    public long Price(ColumnOrder order)
    {
        var columns = order.Graph.Columns;
        long price = 0;
        int sub = 0;
        for (int c = 0; c < columns.Count; c++)
        {
            sub = c > 0 && columns.Zone[c - 1] == columns.Zone[c] ? sub + 1 : 0;
            int[] items = order.Items[c];
            for (int i = 0; i < items.Length; i++)
            {
                if (order.Graph.IsDummy(items[i]) || subColumns[items[i]] < 0)
                {
                    continue;
                }

                if (subColumns[items[i]] != sub)
                {
                    price += OtherSubColumn;
                    continue;
                }

                for (int j = 0; j < i; j++)
                {
                    bool turned = !order.Graph.IsDummy(items[j]) && subColumns[items[j]] == sub && rank[items[j]] > rank[items[i]];
                    price += turned ? PairTurned : 0;
                }
            }
        }

        return price;
    }
}
