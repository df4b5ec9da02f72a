using WireSketch.Drawing.Layout;

namespace WireSketch.Drawing.Tests.Layout;

/// <summary>
/// The laws a sheet obeys, checked in whole numbers on the layout itself: no device over another, no wire through a device
/// or on another net's wire, no label over a label, a device or another wire, every end on its terminal, nothing outside.
/// </summary>
internal static class LayoutLaws
{
    /// <summary>Which law a fault breaks.</summary>
    public enum Law
    {
        /// <summary>Rules of our own drawings alone: sides, walls, zones, room for labels.</summary>
        OwnRules,
        GearOverlap,
        WireThroughGear,
        OnTop,
        LabelOverlap,
        LooseEnd,
        Outside,
    }

    /// <summary>A law broken, in words.</summary>
    public readonly record struct Fault(Law Law, string Words)
    {
        public override string ToString() => Words;
    }

    private readonly record struct Stretch(int Wire, GridPoint A, GridPoint B)
    {
        public int Left => Math.Min(A.X, B.X);
        public int Right => Math.Max(A.X, B.X);
        public int Top => Math.Min(A.Y, B.Y);
        public int Bottom => Math.Max(A.Y, B.Y);
        public bool Level => A.Y == B.Y;
    }

    public static List<Fault> Broken(SheetGraph graph, SheetLayout sheet)
    {
        var faults = BrokenByAny(graph, sheet);
        CheckZones(graph, sheet, faults);
        var stretches = sheet.Wires.SelectMany((w, k) =>
            w.Polylines.SelectMany(c => c.Zip(c.Skip(1))).Select(p => new Stretch(k, p.First, p.Second)))
            .ToList();
        CheckWalls(graph, sheet, stretches, faults);
        return faults;
    }

    /// <summary>The laws that any drawing of the graph must obey, whoever made it.</summary>
    public static List<Fault> BrokenByAny(SheetGraph graph, SheetLayout sheet)
    {
        var faults = new List<Fault>();
        var device = new Dictionary<string, int>();
        var port = new Dictionary<string, (int Device, GridPoint At)>();
        for (int d = 0; d < sheet.Devices.Length; d++)
        {
            device.Add(sheet.Devices[d].Id, d);
            var box = sheet.Devices[d].Box;
            foreach (var p in sheet.Devices[d].Ports)
            {
                port.Add(p.Id, (d, p.At));
                bool onEdge = p.Side switch
                {
                    PortSide.Left => p.At.X == box.X && Within(p.At.Y, box.Y, box.Bottom),
                    PortSide.Right => p.At.X == box.Right && Within(p.At.Y, box.Y, box.Bottom),
                    PortSide.Top => p.At.Y == box.Y && Within(p.At.X, box.X, box.Right),
                    _ => p.At.Y == box.Bottom && Within(p.At.X, box.X, box.Right),
                };
                Check(onEdge, Law.OwnRules, $"terminal {p.Id} is not on its side of {sheet.Devices[d].Id}");
            }

            if (sheet.Devices[d].Ports.Select(p => p.At).Distinct().Count() != sheet.Devices[d].Ports.Length)
            {
                faults.Add(new(Law.OwnRules, $"two terminals of {sheet.Devices[d].Id} are at one place"));
            }

            Check(Holds(sheet.Size, box), Law.Outside, $"device {sheet.Devices[d].Id} is outside");
            Check(
                sheet.Zones.IsEmpty || Holds(sheet.Zones[graph.Devices[d].Zone].Box, box),
                Law.OwnRules,
                $"device {sheet.Devices[d].Id} is outside its zone");
            Check(box.Width >= graph.Devices[d].Width, Law.OwnRules, $"device {sheet.Devices[d].Id} is too narrow");
        }

        var boxes = sheet.Devices.Select(d => d.Box).ToArray();
        foreach (var (i, j) in Overlaps(boxes))
        {
            faults.Add(new(Law.GearOverlap, $"devices {sheet.Devices[i].Id} and {sheet.Devices[j].Id} overlap"));
        }

        var nets = Nets(graph);
        var stretches = new List<Stretch>();
        for (int w = 0; w < sheet.Wires.Length; w++)
        {
            var wire = sheet.Wires[w];
            var link = graph.Wires[w];
            Check(
                wire.Polylines.Length == link.To.Length,
                Law.LooseEnd,
                $"wire {wire.Id} has {wire.Polylines.Length} polylines for {link.To.Length} ends");
            for (int k = 0; k < wire.Polylines.Length; k++)
            {
                var polyline = wire.Polylines[k];
                Check(polyline[0] == port[link.From].At, Law.LooseEnd, $"wire {wire.Id} misses {link.From}");
                Check(polyline[^1] == port[link.To[k]].At, Law.LooseEnd, $"wire {wire.Id} misses {link.To[k]}");
                for (int i = 1; i < polyline.Length; i++)
                {
                    var s = new Stretch(w, polyline[i - 1], polyline[i]);
                    Check(s.A.X == s.B.X ^ s.A.Y == s.B.Y, Law.OwnRules, $"wire {wire.Id} has a stretch from {s.A} to {s.B}");
                    Check(
                        Holds(sheet.Size, new GridRect(s.Left, s.Top, s.Right - s.Left, s.Bottom - s.Top)),
                        Law.Outside,
                        $"wire {wire.Id} is outside");
                    stretches.Add(s);
                }
            }
        }

        CheckWiresAndDevices(sheet, stretches, faults);
        CheckOnTop(sheet, stretches, nets, faults);
        CheckLabels(graph, sheet, stretches, faults);
        return faults;

        void Check(bool holds, Law law, string words)
        {
            if (!holds)
            {
                faults.Add(new(law, words));
            }
        }
    }

    /// <summary>Pairs of stretches of different wires that cross at a right angle, inside both.</summary>
    public static int Crossings(SheetLayout sheet)
    {
        var level = new List<Stretch>();
        var upright = new List<Stretch>();
        for (int w = 0; w < sheet.Wires.Length; w++)
        {
            foreach (var s in sheet.Wires[w].Polylines.SelectMany(c => c.Zip(c.Skip(1)))
                .Select(p => new Stretch(w, p.First, p.Second))
                .Distinct())
            {
                (s.Level ? level : upright).Add(s);
            }
        }

        upright.Sort((a, b) => a.A.X.CompareTo(b.A.X));
        int[] xs = upright.Select(s => s.A.X).ToArray();
        int sum = 0;
        foreach (var s in level)
        {
            int k = Array.BinarySearch(xs, s.Left);
            k = k < 0 ? ~k : k;
            while (k > 0 && xs[k - 1] > s.Left)
            {
                k--;
            }

            for (; k < xs.Length && xs[k] < s.Right; k++)
            {
                sum += xs[k] > s.Left && upright[k].Wire != s.Wire && upright[k].Top < s.A.Y && s.A.Y < upright[k].Bottom ? 1 : 0;
            }
        }

        return sum;
    }

    private static void CheckWiresAndDevices(SheetLayout sheet, List<Stretch> stretches, List<Fault> faults)
    {
        var grid = new BoxGrid(sheet.Devices.Select(d => d.Box));
        foreach (var s in stretches)
        {
            foreach (int d in grid.Near(s.Left, s.Top, s.Right, s.Bottom))
            {
                var b = sheet.Devices[d].Box;
                if (s.Right > b.X && s.Left < b.Right && s.Bottom > b.Y && s.Top < b.Bottom)
                {
                    faults.Add(new(Law.WireThroughGear, $"wire {sheet.Wires[s.Wire].Id} goes through {sheet.Devices[d].Id}"));
                }
            }
        }
    }

    private static void CheckOnTop(SheetLayout sheet, List<Stretch> stretches, int[] nets, List<Fault> faults)
    {
        foreach (var group in stretches.GroupBy(s => (s.Level, s.Level ? s.A.Y : s.A.X)))
        {
            var line = group.Select(s => s.Level ? (s.Wire, From: s.Left, To: s.Right) : (s.Wire, From: s.Top, To: s.Bottom))
                .OrderBy(s => s.From)
                .ToList();
            for (int i = 0; i < line.Count; i++)
            {
                for (int j = i + 1; j < line.Count && line[j].From < line[i].To; j++)
                {
                    if (nets[line[i].Wire] != nets[line[j].Wire])
                    {
                        faults.Add(new(
                            Law.OnTop,
                            $"wires {sheet.Wires[line[i].Wire].Id} and {sheet.Wires[line[j].Wire].Id} lie on each other at {group.Key} "
                                + $"from {line[j].From}"));
                    }
                }
            }
        }
    }

    private static void CheckLabels(SheetGraph graph, SheetLayout sheet, List<Stretch> stretches, List<Fault> faults)
    {
        var labeled = Enumerable.Range(0, sheet.Wires.Length).Where(w => graph.Wires[w].LabelWidth > 0).ToArray();
        var boxes = labeled.Select(w => sheet.Wires[w].Label).ToArray();
        var devices = new BoxGrid(sheet.Devices.Select(d => d.Box));
        var wires = new BoxGrid(stretches.Select(s => new GridRect(s.Left, s.Top, s.Right - s.Left, s.Bottom - s.Top)));
        foreach (var (i, j) in Overlaps(boxes))
        {
            faults.Add(new(Law.LabelOverlap, $"labels of {sheet.Wires[labeled[i]].Id} and {sheet.Wires[labeled[j]].Id} overlap"));
        }

        for (int k = 0; k < labeled.Length; k++)
        {
            int w = labeled[k];
            var b = boxes[k];
            string id = sheet.Wires[w].Id;
            if (b.Width < graph.Wires[w].LabelWidth || b.Height < graph.Wires[w].LabelHeight)
            {
                faults.Add(new(Law.OwnRules, $"label of {id} has no room"));
                continue;
            }

            if (!Holds(sheet.Size, b))
            {
                faults.Add(new(Law.Outside, $"label of {id} is outside"));
            }

            foreach (int d in devices.Near(b.X, b.Y, b.Right, b.Bottom))
            {
                if (Touch(b, sheet.Devices[d].Box))
                {
                    faults.Add(new(Law.LabelOverlap, $"label of {id} is on {sheet.Devices[d].Id}"));
                }
            }

            bool onOwn = false;
            foreach (int i in wires.Near(b.X, b.Y, b.Right, b.Bottom))
            {
                var s = stretches[i];
                bool touches = s.Left < b.Right && s.Right > b.X && s.Top < b.Bottom && s.Bottom > b.Y;
                if (touches && s.Wire != w)
                {
                    faults.Add(new(Law.LabelOverlap, $"label of {id} is under {sheet.Wires[s.Wire].Id}"));
                }

                onOwn |= touches && s.Wire == w && (s.Level ? s.Left <= b.X && s.Right >= b.Right : s.Top <= b.Y && s.Bottom >= b.Bottom);
            }

            if (!onOwn)
            {
                faults.Add(new(Law.OwnRules, $"label of {id} is not on its wire"));
            }
        }
    }

    private static void CheckZones(SheetGraph graph, SheetLayout sheet, List<Fault> faults)
    {
        for (int z = 0; z < sheet.Zones.Length; z++)
        {
            var b = sheet.Zones[z].Box;
            if (b.Y != sheet.Zones[0].Box.Y || b.Height != sheet.Zones[0].Box.Height || !Holds(sheet.Size, b)
                || b.Width < graph.Zones[z].HeadingWidth || (z > 0 && b.X < sheet.Zones[z - 1].Box.Right))
            {
                faults.Add(new(Law.OwnRules, $"zone {sheet.Zones[z].Id} does not tile"));
            }
        }
    }

    private static void CheckWalls(SheetGraph graph, SheetLayout sheet, List<Stretch> stretches, List<Fault> faults)
    {
        if (sheet.Walls.Length != graph.Zones.Take(Math.Max(0, graph.Zones.Length - 1)).Count(z => z.WallAfter))
        {
            faults.Add(new(Law.OwnRules, "walls are missing"));
        }

        var bundle = graph.Wires.ToDictionary(w => w.Id, w => w.Bundle);
        foreach (var wall in sheet.Walls)
        {
            var at = wall.Passes.ToDictionary(p => p.Wire, p => p.At);
            foreach (var s in stretches.Where(s => s.Left < wall.Box.Right && s.Right > wall.Box.X))
            {
                if (!s.Level || s.Left > wall.Box.X || s.Right < wall.Box.Right)
                {
                    faults.Add(new(Law.OwnRules, $"wire {sheet.Wires[s.Wire].Id} bends in a wall"));
                }
                else if (!at.TryGetValue(sheet.Wires[s.Wire].Id, out var p) || p.Y != s.A.Y)
                {
                    faults.Add(new(Law.OwnRules, $"wire {sheet.Wires[s.Wire].Id} passes a wall unmarked"));
                }
            }

            // Passes of one bundle are neighbors.
            var rows = wall.Passes.Select(p => (p.At.Y, bundle[p.Wire])).Distinct().OrderBy(p => p.Y).Select(p => p.Item2).ToList();
            var seen = new HashSet<string>();
            for (int i = 0; i < rows.Count; i++)
            {
                if (rows[i] is { } b && (i == 0 || rows[i - 1] != b) && !seen.Add(b))
                {
                    faults.Add(new(Law.OwnRules, $"bundle {b} is torn apart in a wall"));
                }
            }
        }
    }

    private static int[] Nets(SheetGraph graph)
    {
        var root = new Dictionary<string, string>();
        string Of(string a)
        {
            while (root.TryGetValue(a, out string? up) && up != a)
            {
                a = up;
            }

            return a;
        }

        foreach (var w in graph.Wires)
        {
            foreach (string t in w.To.Prepend(w.From))
            {
                root[Of("t " + t)] = Of("n " + w.Net);
            }
        }

        var ids = graph.Wires.Select(w => Of("n " + w.Net)).ToList();
        return ids.Select(i => ids.IndexOf(i)).ToArray();
    }

    private static bool Within(int v, int from, int to) => v >= from && v <= to;

    private static bool Holds(GridRect outer, GridRect r) =>
        r.X >= outer.X && r.Y >= outer.Y && r.Right <= outer.Right && r.Bottom <= outer.Bottom;

    private static bool Touch(GridRect a, GridRect b) => a.X < b.Right && b.X < a.Right && a.Y < b.Bottom && b.Y < a.Bottom;

    private static IEnumerable<(int, int)> Overlaps(GridRect[] boxes)
    {
        var grid = new BoxGrid(boxes);
        for (int i = 0; i < boxes.Length; i++)
        {
            var b = boxes[i];
            foreach (int j in grid.Near(b.X, b.Y, b.Right, b.Bottom))
            {
                if (j > i && Touch(b, boxes[j]))
                {
                    yield return (i, j);
                }
            }
        }
    }
}
