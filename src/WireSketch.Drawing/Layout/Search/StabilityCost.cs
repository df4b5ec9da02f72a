using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P1Columns;
using WireSketch.Drawing.Layout.P2Order;

namespace WireSketch.Drawing.Layout.Search;

/// <summary>What it costs to move away from an earlier arrangement, so that a small edit of a spec moves little of its drawing.</summary>
internal sealed class StabilityCost
{
    private const int OtherSubColumn = 6000, PairTurned = 1000;

    private readonly SheetModel _model;
    private readonly int[] _sub, _rank;
    private readonly bool[] _turned, _opposite;

    public StabilityCost(SheetModel model, Arrangement previous)
    {
        _model = model;
        _sub = new int[model.Bodies];
        _rank = new int[model.Bodies];
        _turned = StartFacing.Of(model);
        _opposite = new bool[model.PortCount];
        var known = new Dictionary<string, ArrangedDevice>(StringComparer.Ordinal);
        foreach (var device in previous.Devices)
        {
            known[device.Id] = device;
        }

        for (int b = 0; b < model.Bodies; b++)
        {
            _sub[b] = _rank[b] = -1;
            if (known.TryGetValue(model.Device(b).Id, out var was) && was.Zone == model.Graph.Zones[model.BodyZone[b]].Id)
            {
                _sub[b] = Math.Max(0, was.SubColumn);
                _rank[b] = Math.Max(0, was.Rank);
                _turned[b] = was.Turned && model.BodyTurns[b];
                int device = model.BodyDevice[b];
                for (int k = 0; k < model.Device(b).Ports.Length; k++)
                {
                    int p = model.DevicePort[device] + k;
                    _opposite[p] = model.PortFree[p] && !was.Opposite.IsDefault && was.Opposite.Contains(model.Device(b).Ports[k].Id);
                }
            }
        }
    }

    /// <summary>Sub-columns as they were; a new body joins the first of its partners that it finds in its zone.</summary>
    public int[] SubColumns()
    {
        int[] sub = (int[])_sub.Clone();
        for (int l = 0; l < _model.Links; l++)
        {
            int a = _model.SlotBody[_model.LinkFrom[l]], b = _model.SlotBody[_model.LinkTo[l]];
            if (_model.BodyZone[a] == _model.BodyZone[b])
            {
                sub[b] = sub[b] < 0 ? sub[a] : sub[b];
                sub[a] = sub[a] < 0 ? sub[b] : sub[a];
            }
        }

        return Array.ConvertAll(sub, s => (Math.Max(0, s) + 8) * Choices.SubStep);
    }

    public bool[] Facing() => _turned;

    /// <summary>Ports that were opposite to the side they belong on.</summary>
    public bool[] Opposite() => _opposite;

    /// <summary>Positions as they were; -1 for new bodies.</summary>
    public int[] Positions()
    {
        int most = 1;
        foreach (int r in _rank)
        {
            most = Math.Max(most, r + 1);
        }

        return Array.ConvertAll(_rank, r => r < 0 ? -1 : (int)(((2L * r) + 1) * ColumnOrder.Whole / (2 * most)));
    }

    public long Price(ColumnOrder order)
    {
        var columns = order.Wiring.Columns;
        long price = 0;
        int sub = 0;
        for (int c = 0; c < columns.Count; c++)
        {
            sub = c > 0 && columns.Zone[c - 1] == columns.Zone[c] ? sub + 1 : 0;
            int[] items = order.Items[c];
            for (int i = 0; i < items.Length; i++)
            {
                if (order.Wiring.IsLane(items[i]) || _sub[items[i]] < 0)
                {
                    continue;
                }

                if (_sub[items[i]] != sub)
                {
                    price += OtherSubColumn;
                    continue;
                }

                for (int j = 0; j < i; j++)
                {
                    bool turned = !order.Wiring.IsLane(items[j]) && _sub[items[j]] == sub && _rank[items[j]] > _rank[items[i]];
                    price += turned ? PairTurned : 0;
                }
            }
        }

        return price;
    }
}
