using System.Collections.Immutable;

namespace WireSketch.Drawing.Layout;

/// <summary>
/// What one sheet must show, before anything has a place: zones in order from the front of the vehicle to its rear,
/// devices with their terminals, and wires with the size of their labels. All lengths are whole sheet units; a wire
/// label's text is 7.25 units high.
/// </summary>
/// <param name="Zones">Zones in drawing order, front first. Each becomes one or more columns side by side.</param>
/// <param name="Devices">Devices in the order of the spec.</param>
/// <param name="Wires">Wires in the order of the spec.</param>
internal sealed record SheetGraph(ImmutableArray<ZoneBox> Zones, ImmutableArray<DeviceBox> Devices, ImmutableArray<WireLink> Wires);

/// <summary>A zone of the vehicle.</summary>
/// <param name="Id">The zone's id.</param>
/// <param name="HeadingWidth">Least width that its heading needs, in units.</param>
/// <param name="WallAfter">A wall (the firewall) stands between this zone and the next: wires cross it straight, at marked
/// pass-throughs.</param>
internal sealed record ZoneBox(string Id, int HeadingWidth, bool WallAfter);

/// <summary>What a device looks like, as far as placing it is concerned.</summary>
internal enum DeviceShape
{
    /// <summary>A plain box with a header, terminals on its sides, and perhaps lines of text under them.</summary>
    Box,

    /// <summary>A box one terminal pitch high with its name beside one terminal: a speaker, a lamp.</summary>
    Slim,

    /// <summary>An inline fuse or breaker on a run: a small box with one way in and one way out. It may turn round.</summary>
    Holder,

    /// <summary>A chassis point: a symbol and a caption. With a single run from a device of its zone it hangs below that device.</summary>
    Chassis,
}

/// <summary>A device to be placed.</summary>
/// <param name="Id">The device's id; unique on the sheet.</param>
/// <param name="Zone">Index of its zone in <see cref="SheetGraph.Zones"/>.</param>
/// <param name="Shape">How it is drawn.</param>
/// <param name="Width">Least width of its box, in units; the layout may widen it for the names of its terminals.</param>
/// <param name="HeaderHeight">Height taken by name and role above the first row of terminals; for slim devices and holders height beyond
/// that of their row, most often 0.</param>
/// <param name="FooterHeight">Height taken by text under the last row of terminals.</param>
/// <param name="Ports">Its terminals in use. Those of one side may change places unless they are numbered.</param>
/// <param name="Group">Devices with the same group are better placed near each other; null for none.</param>
internal sealed record DeviceBox(
    string Id, int Zone, DeviceShape Shape, int Width, int HeaderHeight, int FooterHeight, ImmutableArray<PortBox> Ports,
    string? Group = null);

/// <summary>The side of a box that a terminal is on.</summary>
internal enum PortSide
{
    Left,
    Right,
    Top,
    Bottom,
}

/// <summary>A terminal of a device.</summary>
/// <param name="Id">The terminal's full name, such as <c>amp.sub</c>; unique on the sheet.</param>
/// <param name="Side">The side it belongs on: supply, signal and control come in at the left, speakers and outputs leave at the right,
/// ground at the bottom.</param>
/// <param name="NameWidth">Width of the name written inside the box, in units.</param>
/// <param name="Numbered">True if its order among its neighbors is fixed (a plug with numbered cavities).</param>
/// <param name="Free">True if it may be on the side opposite to the one it belongs on, where that saves bends: left and right are much
/// the same to it.</param>
internal sealed record PortBox(string Id, PortSide Side, int NameWidth, bool Numbered = false, bool Free = false);

/// <summary>A wire or cable to be drawn: a line that joins two or more terminals.</summary>
/// <param name="Id">The run's id, or the id of a part of it on one side of an inline holder (<c>P1</c> in both cases shares its
/// <paramref name="Run"/>).</param>
/// <param name="Run">The run it belongs to, which is what the label names.</param>
/// <param name="Net">Wires of one net may share dummies and verticals; wires that meet at a terminal are taken for one net whatever they
/// are called.</param>
/// <param name="Kind">supply, ground, line, speaker or control.</param>
/// <param name="From">Terminal it starts at.</param>
/// <param name="To">Terminals it ends at; more than one for a run to several loads.</param>
/// <param name="LabelWidth">Width of the label's widest line, in units; 0 for a wire that carries no label.</param>
/// <param name="LabelHeight">Height of the label, in units.</param>
/// <param name="Weight">Drawn thickness with casing, in units, for keeping clear of neighbors.</param>
/// <param name="Bundle">Wires with the same bundle share a pass-through and run side by side; null for none.</param>
internal sealed record WireLink(
    string Id, string Run, string Net, string Kind, string From, ImmutableArray<string> To, int LabelWidth, int LabelHeight, int Weight,
    string? Bundle = null);

/// <summary>How to lay a sheet out.</summary>
/// <param name="PageWidth">Width of the drawing area on paper, in points.</param>
/// <param name="PageHeight">Height of the drawing area on paper, in points.</param>
/// <param name="Effort">Share of the usual search effort; 1 is usual.</param>
/// <param name="Previous">An arrangement to stay close to; null to lay out afresh.</param>
internal sealed record LayoutOptions(int PageWidth, int PageHeight, double Effort = 1, Arrangement? Previous = null);
