using System.Globalization;
using WireSketch.Drawing.Layout;
using WireSketch.Language;
using WireSketch.Topology;

namespace WireSketch.Drawing.Sheets;

/// <summary>A device of a sheet while its terminals are gathered.</summary>
internal sealed class SheetGroup(string id, string zone, Gear? gear)
{
    public string Id => id;

    public string Zone => zone;

    public Gear? Gear => gear;

    /// <summary>It is shown again on other sheets of its circuit.</summary>
    public bool Repeated { get; set; }

    /// <summary>For a holder: its run.</summary>
    public WiredRun? Run { get; set; }

    /// <summary>For a reference: the run that goes on elsewhere, and its letter.</summary>
    public string? ReferenceTo { get; init; }

    public string? Letter { get; init; }

    public List<(string Id, string Name, PortSide Side)> Ports { get; } = [];

    /// <summary>The run that lands at each terminal.</summary>
    private readonly Dictionary<string, string> runAt = new(StringComparer.Ordinal);

    /// <summary>
    /// A landing at a terminal for each run: two lugs on one post stay two, so that they do not look like a joint in the wire.
    /// </summary>
    public string Landing(string terminal, string run, string name, PortSide side)
    {
        var id = terminal;
        for (var n = 2; runAt.TryGetValue(id, out var other) && other != run; n++)
        {
            id = string.Create(CultureInfo.InvariantCulture, $"{terminal}#{n}");
        }

        runAt[id] = run;
        return Port(id, name, side);
    }

    /// <summary>A terminal by its id, made where it is new.</summary>
    public string Port(string port, string name, PortSide side)
    {
        if (!Ports.Any(p => p.Id == port))
        {
            Ports.Add((port, name, side));
        }

        return port;
    }
}

/// <summary>The parts of a sheet while it is made.</summary>
internal sealed class SheetGroups
{
    /// <summary>Where devices stand that say no zone.</summary>
    private const string Nowhere = "elsewhere";

    private readonly Dictionary<string, SheetGroup> byId = new(StringComparer.Ordinal);

    public List<SheetGroup> Devices { get; } = [];

    public List<WireLink> Links { get; } = [];

    public List<SheetWire> Wires { get; } = [];

    public bool Knows(string gear) => byId.ContainsKey(gear);

    /// <summary>Whether a device stands in a zone.</summary>
    public bool Shows(string zone) => Devices.Any(d => d.Gear is not null && d.Zone == zone);

    public static string ZoneOf(Gear gear) => gear.Zone ?? Nowhere;

    public SheetGroup Add(Gear gear) => Add(gear.Id, () => new(gear.Id, ZoneOf(gear), gear));

    public SheetGroup AddReference(string id, string zone, string run, string letter) =>
        Add(id, () => new(id, zone, null) { ReferenceTo = run, Letter = letter });

    public void Link(SheetWire wire, WireLink link)
    {
        Wires.Add(wire);
        Links.Add(link);
    }

    private SheetGroup Add(string id, Func<SheetGroup> make)
    {
        if (!byId.TryGetValue(id, out var part))
        {
            byId.Add(id, part = make());
            Devices.Add(part);
        }

        return part;
    }
}
