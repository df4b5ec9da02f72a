using System.Collections.Immutable;
using WireSketch.Drawing.Layout.Model;
using WireSketch.Drawing.Layout.P5Label;

namespace WireSketch.Drawing.Layout;

/// <summary>Writes a labeled sheet down in the terms of its graph.</summary>
internal sealed class SheetAssembler
{
    private readonly LabeledSheet _sheet;
    private readonly SheetModel _model;
    private readonly SheetGraph _graph;
    private readonly int[] _satelliteOf, _satelliteAbove;

    private SheetAssembler(LabeledSheet sheet)
    {
        _sheet = sheet;
        _model = sheet.Wiring.Model;
        _graph = _model.Graph;
        _satelliteOf = new int[_graph.Devices.Length];
        _satelliteAbove = new int[_model.PortSide.Length];
        Array.Fill(_satelliteOf, -1);
        Array.Fill(_satelliteAbove, -1);
        for (int s = 0; s < _model.Satellites.Length; s++)
        {
            _satelliteOf[_model.Satellites[s].Device] = s;
            _satelliteAbove[_model.Satellites[s].HostPort] = s;
        }
    }

    public static SheetLayout Assemble(LabeledSheet sheet)
    {
        var a = new SheetAssembler(sheet);
        var size = new GridRect(0, 0, sheet.Width, sheet.Height);
        var zones = a._graph.Zones.Select((z, k) => new PlacedZone(
            z.Id, new GridRect(sheet.ZoneLeft[k], 0, sheet.ZoneRight[k] - sheet.ZoneLeft[k], sheet.Height)));
        var courses = a.Courses();
        var dots = Junctions.Find(a._model, courses);
        var wires = a._graph.Wires.Select((w, k) => new RoutedWire(w.Id, courses[k], a.Label(k), dots[k]));
        return new SheetLayout(size, [.. zones], a.Walls(), a.Devices(), [.. wires], a.Arrangement());
    }

    private ImmutableArray<PlacedDevice> Devices()
    {
        var devices = ImmutableArray.CreateBuilder<PlacedDevice>(_graph.Devices.Length);
        for (int d = 0; d < _graph.Devices.Length; d++)
        {
            var device = _graph.Devices[d];
            var box = Box(d);
            var ports = device.Ports.Select((p, k) => Port(p.Id, d, _model.DevicePort[d] + k));
            devices.Add(new PlacedDevice(device.Id, box, [.. ports]));
        }

        return devices.MoveToImmutable();
    }

    private GridRect Box(int device)
    {
        int b = _model.DeviceBody[device], s = _satelliteOf[device];
        if (b < 0)
        {
            var top = Foot(s);
            return new GridRect(top.X - Measure.ChassisTerminal, top.Y, _graph.Devices[device].Width, _model.Satellites[s].Height);
        }

        var frames = _sheet.Placed.Frames;
        return new GridRect(
            _sheet.BodyX(b), Y(_sheet.Placed.Y[b] + frames.Top[b]), _model.BodyWidth[b], frames.Bottom[b] - frames.Top[b]);
    }

    private PlacedPort Port(string id, int device, int port)
    {
        if (_model.DeviceBody[device] < 0)
        {
            return new PlacedPort(id, Foot(_satelliteOf[device]), PortSide.Top);
        }

        if (_satelliteAbove[port] >= 0)
        {
            return new PlacedPort(id, Head(_satelliteAbove[port]), PortSide.Bottom);
        }

        int slot = _model.PortSlot[port];
        var side = _model.PortSide[port];
        if (side is PortSide.Left or PortSide.Right)
        {
            side = _sheet.Wiring.NodeOnRight[slot] ? PortSide.Left : PortSide.Right;
        }

        return new PlacedPort(id, new GridPoint(_sheet.TerminalX(slot), Y(_sheet.TerminalY(slot))), side);
    }

    // Where a satellite's wire leaves its host, and where it ends.
    private GridPoint Head(int satellite)
    {
        int host = _model.Satellites[satellite].Host;
        var frames = _sheet.Placed.Frames;
        return new GridPoint(_sheet.BodyX(host) + frames.SatelliteX[satellite], Y(_sheet.Placed.Y[host] + frames.Bottom[host]));
    }

    private GridPoint Foot(int satellite)
    {
        var head = Head(satellite);
        return head with { Y = head.Y + _model.Satellites[satellite].Drop };
    }

    private static int Y(int y) => y + Measure.Heading;

    private ImmutableArray<ImmutableArray<GridPoint>>[] Courses()
    {
        var builder = new PolylineBuilder(_sheet);
        var courses = new ImmutableArray<ImmutableArray<GridPoint>>[_graph.Wires.Length];
        for (int w = 0; w < courses.Length; w++)
        {
            int s = _model.WireSatellite[w];
            if (s >= 0)
            {
                var (a, b) = _model.Satellites[s].FromHost ? (Head(s), Foot(s)) : (Foot(s), Head(s));
                courses[w] = [[a, b]];
                continue;
            }

            var all = ImmutableArray.CreateBuilder<ImmutableArray<GridPoint>>();
            for (int l = _model.WireLinks[w]; l < _model.WireLinks[w + 1]; l++)
            {
                all.Add([.. builder.Build(l).Select(p => p with { Y = Y(p.Y) })]);
            }

            courses[w] = all.ToImmutable();
        }

        return courses;
    }

    private GridRect Label(int wire)
    {
        int s = _model.WireSatellite[wire];
        var link = _graph.Wires[wire];
        if (link.LabelWidth <= 0)
        {
            return default;
        }

        if (s >= 0)
        {
            var head = Head(s);
            return new GridRect(head.X - (link.LabelWidth / 2), head.Y + 3, link.LabelWidth, link.LabelHeight);
        }

        int slot = Array.IndexOf(_model.SlotLabel, wire);
        if (slot < 0)
        {
            return default;
        }

        var box = LabelBox.At(_sheet, slot);
        return box with { Y = Y(box.Y) };
    }

    private ImmutableArray<PlacedWall> Walls()
    {
        var walls = ImmutableArray.CreateBuilder<PlacedWall>();
        var w = _sheet.Wiring;
        for (int c = 0; c < w.Columns.Count; c++)
        {
            if (w.Columns.IsWall[c])
            {
                int x = _sheet.ColumnX[c], center = x + (_sheet.ColumnWidth[c] / 2);
                walls.Add(new PlacedWall(new GridRect(x, 0, _sheet.ColumnWidth[c], _sheet.Height), Passes(c, center)));
            }
        }

        return walls.ToImmutable();
    }

    private ImmutableArray<WallPass> Passes(int column, int x)
    {
        var w = _sheet.Wiring;
        var passes = ImmutableArray.CreateBuilder<WallPass>();
        int last = -1;
        for (int l = 0; l < _model.Links; l++)
        {
            foreach (int p in w.Chain(l))
            {
                int a = w.Piece[p].A, b = w.Piece[p].B;
                int node = w.Piece[p].Gutter == column && a >= _model.Slots && w.NodeOnRight[a] ? a
                    : w.Piece[p].Gutter == column && b >= _model.Slots && w.NodeOnRight[b] ? b : -1;
                if (node >= 0 && last != _model.LinkWire[l])
                {
                    last = _model.LinkWire[l];
                    var wire = _graph.Wires[last];
                    passes.Add(new WallPass(wire.Id, wire.Bundle, new GridPoint(x, Y(_sheet.Placed.NodeY(node)))));
                }
            }
        }

        return passes.ToImmutable();
    }

    private ImmutableArray<string> Opposite(int device) =>
        [.. _graph.Devices[device].Ports.Where((_, k) => _sheet.Wiring.Choices.Opposite[_model.DevicePort[device] + k]).Select(p => p.Id)];

    private Arrangement Arrangement()
    {
        var w = _sheet.Wiring;
        int[] sub = new int[w.Columns.Count], rank = new int[_model.Bodies];
        for (int c = 0; c < sub.Length; c++)
        {
            sub[c] = c > 0 && w.Columns.Zone[c - 1] == w.Columns.Zone[c] ? sub[c - 1] + 1 : 0;
            int r = 0;
            foreach (int item in _sheet.Placed.Order.Items[c])
            {
                if (!w.IsLane(item))
                {
                    rank[item] = r++;
                }
            }
        }

        var devices = Enumerable.Range(0, _graph.Devices.Length).Select(d =>
        {
            int b = _model.DeviceBody[d] >= 0 ? _model.DeviceBody[d] : _model.Satellites[_satelliteOf[d]].Host;
            return new ArrangedDevice(_graph.Devices[d].Id, _graph.Zones[_graph.Devices[d].Zone].Id, sub[w.Columns.Of[b]], rank[b], w.Choices.Turned[b], Opposite(d));
        });
        return new Arrangement([.. devices]);
    }
}
