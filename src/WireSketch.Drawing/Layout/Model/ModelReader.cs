namespace WireSketch.Drawing.Layout.Model;

/// <summary>Numbers a graph, ties chassis points to their hosts and settles at which terminal each label lies.</summary>
internal sealed class ModelReader
{
    private readonly SheetGraph graph;
    private readonly Dictionary<string, int> port = new(StringComparer.Ordinal);
    private readonly int[] devicePort, portDevice, portUses, wireNet, labelPort, wireSatellite;
    private readonly PortSide[] side;
    private readonly bool[] isNumbered, free;
    private readonly int[] nameWidth;
    private readonly int[][] ends;
    private readonly List<AttachedGround> satellites = [];
    private int nets;

    private ModelReader(SheetGraph graph)
    {
        this.graph = graph;
        int devices = graph.Devices.Length, ports = 0;
        devicePort = new int[devices + 1];
        for (int d = 0; d < devices; d++)
        {
            devicePort[d] = ports;
            ports += graph.Devices[d].Ports.Length;
        }

        devicePort[devices] = ports;
        portDevice = new int[ports];
        portUses = new int[ports];
        side = new PortSide[ports];
        isNumbered = new bool[ports];
        free = new bool[ports];
        nameWidth = new int[ports];
        for (int d = 0; d < devices; d++)
        {
            for (int k = 0; k < graph.Devices[d].Ports.Length; k++)
            {
                var port = graph.Devices[d].Ports[k];
                int p = devicePort[d] + k;
                this.port.Add(port.Id, p);
                (portDevice[p], side[p], isNumbered[p], nameWidth[p]) = (d, port.Side, port.Numbered, port.NameWidth);
                free[p] = port is { Free: true, Numbered: false, Side: PortSide.Left or PortSide.Right }
                    && graph.Devices[d].Shape == DeviceShape.Box;
            }
        }

        int wires = graph.Wires.Length;
        ends = new int[wires][];
        wireNet = new int[wires];
        labelPort = new int[wires];
        wireSatellite = new int[wires];
        Array.Fill(wireSatellite, -1);
        for (int w = 0; w < wires; w++)
        {
            ends[w] = Ends(graph.Wires[w]);
            for (int k = 0; k < ends[w].Length; k++)
            {
                if (Array.IndexOf(ends[w], ends[w][k]) == k)
                {
                    portUses[ends[w][k]]++;
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
            reader.labelPort[w] = reader.LabelPort(w);
        }

        return reader.Build();
    }

    private int[] Ends(WireLink wire)
    {
        int[] ends = new int[wire.To.Length + 1];
        for (int k = 0; k < ends.Length; k++)
        {
            string id = k == 0 ? wire.From : wire.To[k - 1];
            if (!port.TryGetValue(id, out ends[k]))
            {
                throw new ArgumentException($"Wire {wire.Id} ends at {id}, which is no terminal of the sheet.");
            }
        }

        return ends;
    }

    /// <summary>Two wires at one terminal lie on each other there, whatever they are called, so they are one net.</summary>
    private void JoinNets()
    {
        var byName = new Dictionary<string, int>(StringComparer.Ordinal);
        var sets = new DeviceSets(portDevice.Length + graph.Wires.Length);
        for (int w = 0; w < ends.Length; w++)
        {
            if (!byName.TryGetValue(graph.Wires[w].Net, out int first))
            {
                byName.Add(graph.Wires[w].Net, first = w);
            }

            sets.Join(portDevice.Length + first, portDevice.Length + w);
            foreach (int p in ends[w])
            {
                sets.Join(p, portDevice.Length + w);
            }
        }

        var number = new Dictionary<int, int>();
        for (int w = 0; w < ends.Length; w++)
        {
            int root = sets.Of(portDevice.Length + w);
            if (!number.TryGetValue(root, out int net))
            {
                number.Add(root, net = nets++);
            }

            wireNet[w] = net;
        }
    }

    private void TieSatellites()
    {
        bool[] hosting = new bool[graph.Devices.Length], tied = new bool[graph.Devices.Length];
        for (int w = 0; w < ends.Length; w++)
        {
            if (ends[w].Length != 2)
            {
                continue;
            }

            for (int end = 0; end < 2; end++)
            {
                int port = ends[w][end], far = ends[w][1 - end];
                int device = portDevice[port], host = portDevice[far];
                var box = graph.Devices[device];
                if (box.Shape != DeviceShape.Chassis || box.Ports.Length != 1 || portUses[port] != 1 || portUses[far] != 1
                    || side[far] != PortSide.Bottom || host == device || box.Zone != graph.Devices[host].Zone
                    || graph.Devices[host].Shape == DeviceShape.Chassis || hosting[device] || tied[device] || tied[host])
                {
                    continue;
                }

                (hosting[host], tied[device]) = (true, true);
                var wire = graph.Wires[w];
                int half = (wire.LabelWidth + 1) / 2;
                int drop = wire.LabelWidth > 0 ? wire.LabelHeight + 6 : Measure.ChassisHeight;
                wireSatellite[w] = satellites.Count;
                satellites.Add(new AttachedGround
                {
                    Device = device,
                    Host = host,
                    HostPort = far,
                    Wire = w,
                    FromHost = end == 1,
                    Left = Math.Max(half, Measure.ChassisTerminal) + 1,
                    Right = Math.Max(half, box.Width - Measure.ChassisTerminal) + 1,
                    Drop = drop,
                    Height = Math.Max(Measure.ChassisHeight, box.HeaderHeight + box.FooterHeight),
                });
            }
        }
    }

    /// <summary>
    /// The terminal a label lies at: one that no other wire shares, at a side rather than above or below, at the load rather than the
    /// source.
    /// </summary>
    private int LabelPort(int w)
    {
        if (graph.Wires[w].LabelWidth <= 0 || wireSatellite[w] >= 0 || ends[w].Length < 2)
        {
            return -1;
        }

        int best = -1, bestPrice = int.MaxValue;
        for (int k = 0; k < ends[w].Length; k++)
        {
            int p = ends[w][k];
            int price = (portUses[p] > 1 ? 1000 + portUses[p] : 0) + (side[p] is PortSide.Top or PortSide.Bottom ? 100 : 0)
                + (k == 0 ? ends[w].Length > 2 ? -1 : 10 : Math.Min(k, 9) - 1);
            if (price < bestPrice)
            {
                (best, bestPrice) = (p, price);
            }
        }

        return best;
    }

    /// <summary>Of a wire's terminals the one with most wires, the first of equals.</summary>
    private int Hub(int w)
    {
        int hub = ends[w][0];
        foreach (int p in ends[w])
        {
            hub = portUses[p] > portUses[hub] ? p : hub;
        }

        return hub;
    }

    private SheetModel Build()
    {
        int devices = graph.Devices.Length, ports = portDevice.Length, wires = ends.Length;
        int[] deviceBody = new int[devices];
        var bodyDevice = new List<int>();
        foreach (var s in this.satellites)
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
        foreach (var s in this.satellites)
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
            for (int p = devicePort[bodyDevice[b]]; p < devicePort[bodyDevice[b] + 1]; p++)
            {
                if (!hanging[p])
                {
                    slots.Add(b, p, labelsAt[p], portUses[p] > 1, graph, labelSlot);
                }
            }
        }

        bodySlot[^1] = slots.Count;
        var sidePorts = SidePorts(bodyDevice, slots.PortSlot);
        var satellites = this.satellites.Select(s => s with { Host = deviceBody[s.Host] }).ToArray();
        var links = new LinkList(ends, wireSatellite, slots.PortSlot, labelSlot, slots.PortOf);
        int[][] bodySatellites = new int[bodyDevice.Count][];
        for (int b = 0; b < bodyDevice.Count; b++)
        {
            bodySatellites[b] = Enumerable.Range(0, satellites.Length).Where(s => satellites[s].Host == b).ToArray();
        }

        int[] hub = Enumerable.Range(0, wires).Select(Hub).ToArray(), sharing = new int[ports];
        for (int w = 0; w < wires; w++)
        {
            sharing[hub[w]] += wireSatellite[w] < 0 && ends[w].Length > 1 ? 1 : 0;
        }

        var bundles = new Dictionary<string, int>(StringComparer.Ordinal);
        var model = new SheetModel
        {
            Graph = graph,
            BodyDevice = [.. bodyDevice],
            BodyZone = bodyDevice.Select(d => graph.Devices[d].Zone).ToArray(),
            BodyShape = bodyDevice.Select(d => graph.Devices[d].Shape).ToArray(),
            BodyWidth = new int[bodyDevice.Count],
            BodyTurns = new bool[bodyDevice.Count],
            BodySmall = new bool[bodyDevice.Count],
            BodySlot = bodySlot,
            SidePorts = sidePorts,
            DeviceBody = deviceBody,
            DevicePort = devicePort,
            PortDevice = portDevice,
            PortSide = side,
            PortNumbered = isNumbered,
            PortFree = free,
            PortNameWidth = nameWidth,
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
            WireNet = wireNet,
            WireHub = hub,
            WireBundle = graph.Wires.Select(w => w.Bundle is null ? -1 : Number(bundles, w.Bundle)).ToArray(),
            WireSatellite = wireSatellite,
            SharingWires = Enumerable.Range(0, wires).Where(w => wireSatellite[w] < 0 && sharing[hub[w]] > 1).ToArray(),
            Satellites = satellites,
            BodySatellites = bodySatellites,
            Nets = nets,
        };
        for (int b = 0; b < model.Bodies; b++)
        {
            model.BodyWidth[b] = BoxWidth.Of(model, b);
            model.BodySmall[b] = model.BodyShape[b] is DeviceShape.Slim or DeviceShape.Holder;
            int[] beside = [.. model.Ports(b, PortSide.Left), .. model.Ports(b, PortSide.Right)];
            model.BodyTurns[b] = model.BodySmall[b] || (beside.Length > 0 && Array.TrueForAll(beside, p => free[p]));
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
        var at = new List<int>[portDevice.Length];
        for (int p = 0; p < at.Length; p++)
        {
            at[p] = [];
        }

        for (int w = 0; w < labelPort.Length; w++)
        {
            if (labelPort[w] >= 0)
            {
                at[labelPort[w]].Add(w);
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
                for (int p = devicePort[bodyDevice[b]]; p < devicePort[bodyDevice[b] + 1]; p++)
                {
                    if ((int)this.side[p] == side && portSlot[p] >= 0)
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
