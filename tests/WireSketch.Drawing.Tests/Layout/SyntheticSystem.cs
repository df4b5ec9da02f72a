using System.Collections.Immutable;
using WireSketch.Drawing.Layout;

namespace WireSketch.Drawing.Tests.Layout;

/// <summary>
/// Invented installs as sheet graphs: one or two batteries, holders on supply runs, distribution blocks, processors,
/// amplifiers with pairs to their speakers, runs to several loads, a wall behind the engine bay with pass-throughs.
/// </summary>
internal sealed class SyntheticSystem
{
    private static readonly string[] ZoneNames = ["engine bay", "dash", "cabin", "rear"];
    private static readonly string[] Sizes = ["4 AWG", "8 AWG", "12 AWG", "16 AWG", "18 AWG"];

    private readonly SyntheticChance random;
    private readonly List<Part> parts = [];
    private readonly List<WireLink> wires = [];
    private readonly Dictionary<string, int> count = [];
    private readonly int devices;

    private SyntheticSystem(int devices, int seed)
    {
        this.devices = devices;
        random = new SyntheticChance(seed);
    }

    private sealed record Part(string Id, int Zone, DeviceShape Shape, int Footer, string? Group, List<PortBox> Ports);

    public static SheetGraph Of(int devices, int seed)
    {
        var system = new SyntheticSystem(devices, seed);
        system.Fill();
        var zones = ZoneNames.Select((z, k) => new ZoneBox(z, TextWidth.Of(z.ToUpperInvariant()) + 8, k == 0));
        var boxes = system.parts.Select(p => new DeviceBox(
            p.Id, p.Zone, p.Shape, TextWidth.Of(p.Id) + (p.Shape == DeviceShape.Box ? 14 : 22),
            p.Shape == DeviceShape.Box ? 12 : 0, p.Footer, [.. p.Ports], p.Group));
        return new SheetGraph([.. zones], [.. boxes], [.. system.wires]);
    }

    public static string Label(string wire) => wire + " · AWG\n20 A · 3 ft";

    private void Fill()
    {
        int chassis = 0, blocks = 0, processors = 0, amplifiers = 0, free = 0;
        var battery = Add("battery", 0, DeviceShape.Box);
        Ground(battery, "body", ref chassis);
        var radio = Add("radio", 1, DeviceShape.Box, footer: 9);
        Ground(radio, null, ref chassis);
        Run("control", Port(Add("ignition", 1, DeviceShape.Slim), "live", PortSide.Right), Port(radio, "accessory", PortSide.Left));
        Supply(Port(battery, "+", PortSide.Right), Port(radio, "+", PortSide.Left), radio.Zone, holder: true);
        string remote = Port(radio, "remote", PortSide.Right);
        string feed = Port(battery, "+", PortSide.Right);
        if (devices >= 20)
        {
            var isolator = Add("isolator", 0, DeviceShape.Box);
            Run("supply", feed, Port(isolator, "main", PortSide.Left));
            var second = Add("battery2", 3, DeviceShape.Box);
            Ground(second, null, ref chassis);
            Supply(Port(isolator, "second", PortSide.Right), Port(second, "+", PortSide.Left), 3, holder: true);
            feed = random.Is(50) ? feed : Port(second, "out", PortSide.Right);
        }

        Part? block = null, processor = null;
        while (parts.Count < devices)
        {
            if (block is null || free == 0)
            {
                block = Add($"dist{++blocks}", random.Of(2, 3), DeviceShape.Box);
                free = 5;
                Supply(feed, Port(block, "in", PortSide.Left), block.Zone, holder: blocks % 2 == 1);
                if (processor is null || random.Is(40))
                {
                    processor = Add($"proc{++processors}", random.Of(1, 2), DeviceShape.Box, footer: 9);
                    Ground(processor, null, ref chassis);
                    Run("control", remote, Port(processor, "remote", PortSide.Left));
                    Run("supply", Port(block, $"out{free--}", PortSide.Right), Port(processor, "+", PortSide.Left));
                    foreach (string group in (string[])["front", "rear"])
                    {
                        Run("line", Port(radio, group, PortSide.Right), Port(processor, "in " + group, PortSide.Left));
                    }
                }
            }

            Amplifier(++amplifiers, block, ref free, processor!, remote, ref chassis);
        }
    }

    private void Amplifier(int number, Part block, ref int free, Part processor, string remote, ref int chassis)
    {
        int channels = random.Of(1, 2, 4, 4);
        var amp = Add($"amp{number}", random.Of(2, 3, 3), DeviceShape.Box, footer: random.Of(0, 9, 18), group: $"amp{number}");
        Ground(amp, null, ref chassis);
        Run("supply", Port(block, $"out{free--}", PortSide.Right), Port(amp, "+", PortSide.Left));
        Run("control", remote, Port(amp, "remote", PortSide.Left));
        bool plug = random.Is(30);
        for (int c = 1; c <= (channels + 1) / 2; c++)
        {
            Run("line", Port(processor, $"out {number}.{c}", PortSide.Right), Port(amp, $"in{c}", PortSide.Left, plug));
        }

        if (channels == 1 && random.Is(50))
        {
            var coils = Enumerable.Range(1, 2)
                .Select(k => Port(Add($"sub{number}{(char)('a' + k - 1)}", 3, DeviceShape.Slim, group: amp.Group), "coil", PortSide.Left))
                .ToArray();
            Run("speaker", [Port(amp, "sub", PortSide.Right)], coils);
            return;
        }

        for (int c = 1; c <= channels; c++)
        {
            int zone = channels == 1 ? 3 : random.Of(1, 2, 3);
            var speaker = Add($"spk{number}{(char)('a' + c - 1)}", zone, DeviceShape.Slim, group: amp.Group);
            Run("speaker", Port(amp, $"ch{c}", PortSide.Right, plug), Port(speaker, "coil", PortSide.Left));
        }
    }

    private Part Add(string id, int zone, DeviceShape shape, int footer = 0, string? group = null)
    {
        var part = new Part(id, zone, shape, footer, group, []);
        parts.Add(part);
        return part;
    }

    private static string Port(Part part, string name, PortSide side, bool numbered = false)
    {
        string id = part.Id + "." + name;
        if (part.Ports.All(p => p.Id != id))
        {
            bool named = part.Shape == DeviceShape.Box;
            part.Ports.Add(new PortBox(id, side, named ? TextWidth.Of(name) : 0, numbered, HasFreeSides(part)));
        }

        return id;
    }

    // Batteries, isolators and distribution blocks are the same either way round; what handles signals is not.
    private static bool HasFreeSides(Part part) =>
        part.Id.StartsWith("battery", StringComparison.Ordinal)
            || part.Id.StartsWith("isolator", StringComparison.Ordinal)
            || part.Id.StartsWith("dist", StringComparison.Ordinal);

    // Most devices have a chassis point of their own; every third shares one.
    private void Ground(Part part, string? name, ref int chassis)
    {
        bool shared = name is null && ++chassis % 3 == 0;
        string id = name ?? (shared ? $"bar{part.Zone}" : $"bolt{chassis}");
        var point = parts.Find(p => p.Id == id) ?? Add(id, part.Zone, DeviceShape.Chassis);
        Run("ground", Port(part, "-", PortSide.Bottom), Port(point, "g", PortSide.Top));
    }

    private void Supply(string from, string to, int zone, bool holder)
    {
        if (!holder)
        {
            Run("supply", from, to, zone > 0 && from.StartsWith("battery.", StringComparison.Ordinal) ? "grommet" : null);
            return;
        }

        string run = NextId("supply");
        var part = Add(run + ".fuse", 0, DeviceShape.Holder);
        string near = Port(part, "in", PortSide.Left), far = Port(part, "out", PortSide.Right);
        Link(run + "-1", run, "supply", [from], [near], labeled: false, null);
        Link(run + "-2", run, "supply", [far], [to], labeled: true, "grommet");
    }

    private void Run(string kind, string from, string to, string? bundle = null) => Run(kind, [from], [to], bundle);

    private void Run(string kind, string[] from, string[] to, string? bundle = null)
    {
        string id = NextId(kind);
        Link(id, id, kind, from, to, labeled: true, bundle);
    }

    private string NextId(string kind)
    {
        string letter = kind switch { "supply" => "P", "ground" => "G", "line" => "L", "speaker" => "S", _ => "R" };
        count[letter] = count.GetValueOrDefault(letter) + 1;
        return letter + count[letter];
    }

    private void Link(string id, string run, string kind, string[] from, string[] to, bool labeled, string? bundle)
    {
        string text = $"{run} · {random.Of(Sizes)}";
        int weight = kind is "supply" or "ground" ? 4 : 3, lines = random.Is(10) ? 26 : 18;
        wires.Add(new WireLink(
            id, run, "net " + from[0], kind, from[0], [.. to], labeled ? TextWidth.Of(text) + 6 : 0, labeled ? lines : 0, weight, bundle));
    }
}
