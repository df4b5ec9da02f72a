namespace WireSketch.Drawing.Layout.Model;

/// <summary>Numbers a graph, ties chassis points to their hosts and settles at which terminal each label lies.</summary>
internal sealed class ModelReader
{
    private readonly SheetGraph _graph;
    private readonly Dictionary<string, int> _port = new(StringComparer.Ordinal);
    private readonly int[] _devicePort, _portDevice, _portUses, _wireNet, _labelPort, _wireSatellite;
    private readonly PortSide[] _side;
    private readonly bool[] _numbered, _free;
    private readonly int[] _nameWidth;
    private readonly int[][] _ends;
    private readonly List<AttachedGround> _satellites = [];
    private int _nets;

    private ModelReader(SheetGraph graph)
    {
        _graph = graph;
        int devices = graph.Devices.Length, ports = 0;
        _devicePort = new int[devices + 1];
        for (int d = 0; d < devices; d++)
        {
            _devicePort[d] = ports;
            ports += graph.Devices[d].Ports.Length;
        }

        _devicePort[devices] = ports;
        _portDevice = new int[ports];
        _portUses = new int[ports];
        _side = new PortSide[ports];
        _numbered = new bool[ports];
        _free = new bool[ports];
        _nameWidth = new int[ports];
        for (int d = 0; d < devices; d++)
        {
            for (int k = 0; k < graph.Devices[d].Ports.Length; k++)
            {
                var port = graph.Devices[d].Ports[k];
                int p = _devicePort[d] + k;
                _port.Add(port.Id, p);
                (_portDevice[p], _side[p], _numbered[p], _nameWidth[p]) = (d, port.Side, port.Numbered, port.NameWidth);
                _free[p] = port is { Free: true, Numbered: false, Side: PortSide.Left or PortSide.Right } && graph.Devices[d].Shape == DeviceShape.Box;
            }
        }

        int wires = graph.Wires.Length;
        _ends = new int[wires][];
        _wireNet = new int[wires];
        _labelPort = new int[wires];
        _wireSatellite = new int[wires];
        Array.Fill(_wireSatellite, -1);
        for (int w = 0; w < wires; w++)
        {
            _ends[w] = Ends(graph.Wires[w]);
            for (int k = 0; k < _ends[w].Length; k++)
            {
                if (Array.IndexOf(_ends[w], _ends[w][k]) == k)
                {
                    _portUses[_ends[w][k]]++;
                }
            }
        }
    }

    public static SheetModel Read(SheetGraph graph)
    {
        var reader = new ModelReader(graph);
        reader.JoinNets();
        reader.TieSatellites();
        for (int w = 0; w < graph.Wires.Length; w++)
        {
            reader._labelPort[w] = reader.LabelPort(w);
        }

        return reader.Build();
    }

    private int[] Ends(WireLink wire)
    {
        int[] ends = new int[wire.To.Length + 1];
        for (int k = 0; k < ends.Length; k++)
        {
            string id = k == 0 ? wire.From : wire.To[k - 1];
            if (!_port.TryGetValue(id, out ends[k]))
            {
                throw new ArgumentException($"Wire {wire.Id} ends at {id}, which is no terminal of the sheet.");
            }
        }

        return ends;
    }

    // Two wires at one terminal lie on each other there, whatever they are called, so they are one net.
    private void JoinNets()
    {
        var byName = new Dictionary<string, int>(StringComparer.Ordinal);
        var sets = new DeviceSets(_portDevice.Length + _graph.Wires.Length);
        for (int w = 0; w < _ends.Length; w++)
        {
            if (!byName.TryGetValue(_graph.Wires[w].Net, out int first))
            {
                byName.Add(_graph.Wires[w].Net, first = w);
            }

            sets.Join(_portDevice.Length + first, _portDevice.Length + w);
            foreach (int p in _ends[w])
            {
                sets.Join(p, _portDevice.Length + w);
            }
        }

        var number = new Dictionary<int, int>();
        for (int w = 0; w < _ends.Length; w++)
        {
            int root = sets.Of(_portDevice.Length + w);
            if (!number.TryGetValue(root, out int net))
            {
                number.Add(root, net = _nets++);
            }

            _wireNet[w] = net;
        }
    }

    private void TieSatellites()
    {
        bool[] hosting = new bool[_graph.Devices.Length], tied = new bool[_graph.Devices.Length];
        for (int w = 0; w < _ends.Length; w++)
        {
            if (_ends[w].Length != 2)
            {
                continue;
            }

            for (int end = 0; end < 2; end++)
            {
                int port = _ends[w][end], far = _ends[w][1 - end];
                int device = _portDevice[port], host = _portDevice[far];
                var box = _graph.Devices[device];
                if (box.Shape != DeviceShape.Chassis || box.Ports.Length != 1 || _portUses[port] != 1 || _portUses[far] != 1
                    || _side[far] != PortSide.Bottom || host == device || box.Zone != _graph.Devices[host].Zone
                    || _graph.Devices[host].Shape == DeviceShape.Chassis || hosting[device] || tied[device] || tied[host])
                {
                    continue;
                }

                (hosting[host], tied[device]) = (true, true);
                var wire = _graph.Wires[w];
                int half = (wire.LabelWidth + 1) / 2;
                int drop = wire.LabelWidth > 0 ? wire.LabelHeight + 6 : Measure.ChassisHeight;
                _wireSatellite[w] = _satellites.Count;
                _satellites.Add(new AttachedGround(
                    device, host, far, w, end == 1, Math.Max(half, Measure.ChassisTerminal) + 1,
                    Math.Max(half, box.Width - Measure.ChassisTerminal) + 1, drop,
                    Math.Max(Measure.ChassisHeight, box.HeaderHeight + box.FooterHeight)));
            }
        }
    }

    /// <summary>The terminal a label lies at: one that no other wire shares, at a side rather than above or below, at the load rather than the source.</summary>
    private int LabelPort(int w)
    {
        if (_graph.Wires[w].LabelWidth <= 0 || _wireSatellite[w] >= 0 || _ends[w].Length < 2)
        {
            return -1;
        }

        int best = -1, bestPrice = int.MaxValue;
        for (int k = 0; k < _ends[w].Length; k++)
        {
            int p = _ends[w][k];
            int price = (_portUses[p] > 1 ? 1000 + _portUses[p] : 0) + (_side[p] is PortSide.Top or PortSide.Bottom ? 100 : 0)
                + (k == 0 ? _ends[w].Length > 2 ? -1 : 10 : Math.Min(k, 9) - 1);
            if (price < bestPrice)
            {
                (best, bestPrice) = (p, price);
            }
        }

        return best;
    }

    // Of a wire's terminals the one with most wires, the first of equals.
    private int Hub(int w)
    {
        int hub = _ends[w][0];
        foreach (int p in _ends[w])
        {
            hub = _portUses[p] > _portUses[hub] ? p : hub;
        }

        return hub;
    }

    private SheetModel Build()
    {
        int devices = _graph.Devices.Length, ports = _portDevice.Length, wires = _ends.Length;
        int[] deviceBody = new int[devices];
        var bodyDevice = new List<int>();
        foreach (var s in _satellites)
        {
            deviceBody[s.Device] = -1;
        }

        for (int d = 0; d < devices; d++)
        {
            if (deviceBody[d] == 0)
            {
                deviceBody[d] = bodyDevice.Count;
                bodyDevice.Add(d);
            }
        }

        bool[] hanging = new bool[ports];
        foreach (var s in _satellites)
        {
            hanging[s.HostPort] = true;
        }

        var slots = new SlotList(ports);
        int[] bodySlot = new int[bodyDevice.Count + 1];
        int[] labelSlot = new int[wires];
        Array.Fill(labelSlot, -1);
        var labelsAt = LabelsByPort();
        for (int b = 0; b < bodyDevice.Count; b++)
        {
            bodySlot[b] = slots.Count;
            for (int p = _devicePort[bodyDevice[b]]; p < _devicePort[bodyDevice[b] + 1]; p++)
            {
                if (!hanging[p])
                {
                    slots.Add(b, p, labelsAt[p], _portUses[p] > 1, _graph, labelSlot);
                }
            }
        }

        bodySlot[^1] = slots.Count;
        var sidePorts = SidePorts(bodyDevice, slots.PortSlot);
        var satellites = _satellites.Select(s => s with { Host = deviceBody[s.Host] }).ToArray();
        var links = new LinkList(_ends, _wireSatellite, slots.PortSlot, labelSlot, slots.PortOf);
        int[][] bodySatellites = new int[bodyDevice.Count][];
        for (int b = 0; b < bodyDevice.Count; b++)
        {
            bodySatellites[b] = Enumerable.Range(0, satellites.Length).Where(s => satellites[s].Host == b).ToArray();
        }

        int[] hub = Enumerable.Range(0, wires).Select(Hub).ToArray(), sharing = new int[ports];
        for (int w = 0; w < wires; w++)
        {
            sharing[hub[w]] += _wireSatellite[w] < 0 && _ends[w].Length > 1 ? 1 : 0;
        }

        var bundles = new Dictionary<string, int>(StringComparer.Ordinal);
        var model = new SheetModel
        {
            Graph = _graph,
            BodyDevice = [.. bodyDevice],
            BodyZone = bodyDevice.Select(d => _graph.Devices[d].Zone).ToArray(),
            BodyShape = bodyDevice.Select(d => _graph.Devices[d].Shape).ToArray(),
            BodyWidth = new int[bodyDevice.Count],
            BodyTurns = new bool[bodyDevice.Count],
            BodySmall = new bool[bodyDevice.Count],
            BodySlot = bodySlot,
            SidePorts = sidePorts,
            DeviceBody = deviceBody,
            DevicePort = _devicePort,
            PortDevice = _portDevice,
            PortSide = _side,
            PortNumbered = _numbered,
            PortFree = _free,
            PortNameWidth = _nameWidth,
            PortSlot = slots.PortSlot,
            PortSlots = slots.PortSlots,
            SlotBody = [.. slots.Body],
            SlotPort = [.. slots.PortOf],
            SlotHalf = [.. slots.Half],
            SlotLabel = [.. slots.Label],
            LinkWire = [.. links.Wire],
            LinkFrom = [.. links.From],
            LinkTo = [.. links.To],
            WireLinks = links.First,
            WireNet = _wireNet,
            WireHub = hub,
            WireBundle = _graph.Wires.Select(w => w.Bundle is null ? -1 : Number(bundles, w.Bundle)).ToArray(),
            WireSatellite = _wireSatellite,
            SharingWires = Enumerable.Range(0, wires).Where(w => _wireSatellite[w] < 0 && sharing[hub[w]] > 1).ToArray(),
            Satellites = satellites,
            BodySatellites = bodySatellites,
            Nets = _nets,
        };
        for (int b = 0; b < model.Bodies; b++)
        {
            model.BodyWidth[b] = BoxWidth.Of(model, b);
            model.BodySmall[b] = model.BodyShape[b] is DeviceShape.Slim or DeviceShape.Holder;
            int[] beside = [.. model.Ports(b, PortSide.Left), .. model.Ports(b, PortSide.Right)];
            model.BodyTurns[b] = model.BodySmall[b] || (beside.Length > 0 && Array.TrueForAll(beside, p => _free[p]));
        }

        return model;
    }

    private static int Number(Dictionary<string, int> numbers, string name)
    {
        if (!numbers.TryGetValue(name, out int n))
        {
            numbers.Add(name, n = numbers.Count);
        }

        return n;
    }

    private List<int>[] LabelsByPort()
    {
        var at = new List<int>[_portDevice.Length];
        for (int p = 0; p < at.Length; p++)
        {
            at[p] = [];
        }

        for (int w = 0; w < _labelPort.Length; w++)
        {
            if (_labelPort[w] >= 0)
            {
                at[_labelPort[w]].Add(w);
            }
        }

        return at;
    }

    private int[][] SidePorts(List<int> bodyDevice, int[] portSlot)
    {
        int[][] sides = new int[4 * bodyDevice.Count][];
        for (int b = 0; b < bodyDevice.Count; b++)
        {
            for (int side = 0; side < 4; side++)
            {
                var list = new List<int>();
                for (int p = _devicePort[bodyDevice[b]]; p < _devicePort[bodyDevice[b] + 1]; p++)
                {
                    if ((int)_side[p] == side && portSlot[p] >= 0)
                    {
                        list.Add(p);
                    }
                }

                sides[(4 * b) + side] = [.. list];
            }
        }

        return sides;
    }
}
