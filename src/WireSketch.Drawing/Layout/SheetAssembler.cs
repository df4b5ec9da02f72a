using System.Collections.Immutable;
using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout;

/// <summary>Writes a labeled sheet down in the terms of its graph.</summary>
internal sealed class SheetAssembler
{
    private readonly LabeledSheet sheet;
    private readonly SheetModel model;
    private readonly SheetGraph graph;
    private readonly int[] satelliteOf, satelliteAbove;

    private SheetAssembler(LabeledSheet sheet)
    {
        this.sheet = sheet;
        model = sheet.Graph.Model;
        graph = model.Graph;
        satelliteOf = new int[graph.Devices.Length];
        satelliteAbove = new int[model.PortSide.Length];
        Array.Fill(satelliteOf, -1);
        Array.Fill(satelliteAbove, -1);
        for (int s = 0; s < model.Satellites.Length; s++)
        {
            satelliteOf[model.Satellites[s].Device] = s;
            satelliteAbove[model.Satellites[s].HostPort] = s;
        }
    }

    public static SheetLayout Assemble(LabeledSheet sheet)
    {
        var a = new SheetAssembler(sheet);
        var size = new GridRect(0, 0, sheet.Width, sheet.Height);
        var zones = a.graph.Zones.Select((z, k) => new PlacedZone(
            z.Id, new GridRect(sheet.ZoneLeft[k], 0, sheet.ZoneRight[k] - sheet.ZoneLeft[k], sheet.Height)));
        var polylines = a.Polylines();
        var dots = Junctions.Find(a.model, polylines);
        var wires = a.graph.Wires.Select((w, k) => new RoutedWire(w.Id, polylines[k], a.Label(k), dots[k]));
        return new SheetLayout(size, [.. zones], a.Walls(), a.Devices(), [.. wires], a.Arrangement());
    }

    private ImmutableArray<PlacedDevice> Devices()
    {
        var devices = ImmutableArray.CreateBuilder<PlacedDevice>(graph.Devices.Length);
        for (int d = 0; d < graph.Devices.Length; d++)
        {
            var device = graph.Devices[d];
            var box = Box(d);
            var ports = device.Ports.Select((p, k) => Port(p.Id, d, model.DevicePort[d] + k));
            devices.Add(new PlacedDevice(device.Id, box, [.. ports]));
        }

        return devices.MoveToImmutable();
    }

    private GridRect Box(int device)
    {
        int b = model.DeviceBody[device], s = satelliteOf[device];
        if (b < 0)
        {
            var top = Foot(s);
            return new GridRect(top.X - Measure.ChassisTerminal, top.Y, graph.Devices[device].Width, model.Satellites[s].Height);
        }

        var frames = sheet.Placed.Frames;
        return new GridRect(
            sheet.BodyX(b), Y(sheet.Placed.Y[b] + frames.Top[b]), model.BodyWidth[b], frames.Bottom[b] - frames.Top[b]);
    }

    private PlacedPort Port(string id, int device, int port)
    {
        if (model.DeviceBody[device] < 0)
        {
            return new PlacedPort(id, Foot(satelliteOf[device]), PortSide.Top);
        }

        if (satelliteAbove[port] >= 0)
        {
            return new PlacedPort(id, Head(satelliteAbove[port]), PortSide.Bottom);
        }

        int slot = model.PortSlot[port];
        var side = model.PortSide[port];
        if (side is PortSide.Left or PortSide.Right)
        {
            side = sheet.Graph.NodeOnRight[slot] ? PortSide.Left : PortSide.Right;
        }

        return new PlacedPort(id, new GridPoint(sheet.TerminalX(slot), Y(sheet.TerminalY(slot))), side);
    }

    /// <summary>Where a satellite's wire leaves its host, and where it ends.</summary>
    private GridPoint Head(int satellite)
    {
        int host = model.Satellites[satellite].Host;
        var frames = sheet.Placed.Frames;
        return new GridPoint(sheet.BodyX(host) + frames.SatelliteX[satellite], Y(sheet.Placed.Y[host] + frames.Bottom[host]));
    }

    private GridPoint Foot(int satellite)
    {
        var head = Head(satellite);
        return head with { Y = head.Y + model.Satellites[satellite].Drop };
    }

    private static int Y(int y) => y + Measure.Heading;

    private ImmutableArray<ImmutableArray<GridPoint>>[] Polylines()
    {
        var builder = new PolylineBuilder(sheet);
        var polylines = new ImmutableArray<ImmutableArray<GridPoint>>[graph.Wires.Length];
        for (int w = 0; w < polylines.Length; w++)
        {
            int s = model.WireSatellite[w];
            if (s >= 0)
            {
                var (a, b) = model.Satellites[s].FromHost ? (Head(s), Foot(s)) : (Foot(s), Head(s));
                polylines[w] = [[a, b]];
                continue;
            }

            var all = ImmutableArray.CreateBuilder<ImmutableArray<GridPoint>>();
            for (int l = model.WireLinks[w]; l < model.WireLinks[w + 1]; l++)
            {
                all.Add([.. builder.Build(l).Select(p => p with { Y = Y(p.Y) })]);
            }

            polylines[w] = all.ToImmutable();
        }

        return polylines;
    }

    private GridRect Label(int wire)
    {
        int s = model.WireSatellite[wire];
        var link = graph.Wires[wire];
        if (link.LabelWidth <= 0)
        {
            return default;
        }

        if (s >= 0)
        {
            var head = Head(s);
            return new GridRect(head.X - (link.LabelWidth / 2), head.Y + 3, link.LabelWidth, link.LabelHeight);
        }

        int slot = Array.IndexOf(model.SlotLabel, wire);
        if (slot < 0)
        {
            return default;
        }

        var box = LabelBox.At(sheet, slot);
        return box with { Y = Y(box.Y) };
    }

    private ImmutableArray<PlacedWall> Walls()
    {
        var walls = ImmutableArray.CreateBuilder<PlacedWall>();
        var w = sheet.Graph;
        for (int c = 0; c < w.Columns.Count; c++)
        {
            if (w.Columns.IsWall[c])
            {
                int x = sheet.ColumnX[c], center = x + (sheet.ColumnWidth[c] / 2);
                walls.Add(new PlacedWall(new GridRect(x, 0, sheet.ColumnWidth[c], sheet.Height), Passes(c, center)));
            }
        }

        return walls.ToImmutable();
    }

    private ImmutableArray<WallPass> Passes(int column, int x)
    {
        var w = sheet.Graph;
        var passes = ImmutableArray.CreateBuilder<WallPass>();
        int last = -1;
        for (int l = 0; l < model.Links; l++)
        {
            foreach (int p in w.Chain(l))
            {
                int a = w.Segment[p].A, b = w.Segment[p].B;
                int node = w.Segment[p].Channel == column && a >= model.Slots && w.NodeOnRight[a] ? a
                    : w.Segment[p].Channel == column && b >= model.Slots && w.NodeOnRight[b] ? b : -1;
                if (node >= 0 && last != model.LinkWire[l])
                {
                    last = model.LinkWire[l];
                    var wire = graph.Wires[last];
                    passes.Add(new WallPass(wire.Id, wire.Bundle, new GridPoint(x, Y(sheet.Placed.NodeY(node)))));
                }
            }
        }

        return passes.ToImmutable();
    }

    private ImmutableArray<string> Opposite(int device) =>
        [.. graph.Devices[device].Ports.Where((_, k) => sheet.Graph.Choices.Opposite[model.DevicePort[device] + k]).Select(p => p.Id)];

    private Arrangement Arrangement()
    {
        var w = sheet.Graph;
        int[] sub = new int[w.Columns.Count], rank = new int[model.Bodies];
        for (int c = 0; c < sub.Length; c++)
        {
            sub[c] = c > 0 && w.Columns.Zone[c - 1] == w.Columns.Zone[c] ? sub[c - 1] + 1 : 0;
            int r = 0;
            foreach (int item in sheet.Placed.Order.Items[c])
            {
                if (!w.IsDummy(item))
                {
                    rank[item] = r++;
                }
            }
        }

        var devices = Enumerable.Range(0, graph.Devices.Length).Select(d =>
        {
            int b = model.DeviceBody[d] >= 0 ? model.DeviceBody[d] : model.Satellites[satelliteOf[d]].Host;
            return new ArrangedDevice(
                graph.Devices[d].Id, graph.Zones[graph.Devices[d].Zone].Id, sub[w.Columns.Of[b]], rank[b], w.Choices.Turned[b],
                Opposite(d));
        });
        return new Arrangement([.. devices]);
    }
}
